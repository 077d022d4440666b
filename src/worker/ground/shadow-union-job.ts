import type { GeoPoint } from '../../core/place/geo-point.ts';
import { isInShadow, type PointShade } from '../../core/skyline/in-shadow.ts';
import { OPEN_FROM_SHARE, type Obstacle } from '../../core/skyline/obstacle.ts';
import { shadowOutlines } from '../../core/skyline/shadow-outlines.ts';
import { shadowsAt, type ShadowSun } from '../../core/skyline/shadow.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { gatheredRings } from './gathered-rings.ts';
import { shadowGeoJson, shadowPolygons, type ShadowPolygon } from './shadow-polygons.ts';
import { areaCm2, unionInSteps } from './union-in-steps.ts';

export type ShadowUnionInput = {
  readonly obstacles: readonly Obstacle[];
  readonly sun: ShadowSun;
  /** Civil date, for the leaves. */
  readonly date: string;
  /** On the ground, each answered by the ray to the sun. */
  readonly points: readonly GeoPoint[];
};

export type ShadowUnion = {
  /** Of the ground in shadow, footprints included. */
  readonly areaM2: number;
  readonly polygons: readonly ShadowPolygon[];
  /** The same as a feature of RFC 7946. */
  readonly geoJson: string;
  readonly points: readonly PointShade[];
  /** The sun stands so low that shadows were ended early. */
  readonly isCutShort: boolean;
  readonly leftOutCount: number;
};

/**
 * The ground in shadow as one shape: shadows that let less than half of the light through, joined on
 * a plane in whole centimetres. No answer without a sun, or with an outline 50 km from the first.
 */
export async function* shadowUnionJob({
  obstacles,
  sun,
  date,
  points,
}: ShadowUnionInput): AsyncGenerator<number, Result<ShadowUnion, string>> {
  const outlines = shadowOutlines(obstacles);
  const shadows = shadowsAt(outlines, { sun, date });
  if (!shadows.ok) return fail('The sun is below the horizon: everything is in shadow.');
  yield 0.05;
  const dark = shadows.value.groups.filter(({ passes }) => passes < OPEN_FROM_SHARE);
  const gathered = gatheredRings(dark);
  if (!gathered.ok) return gathered;
  const union = unionInSteps(gathered.value.bundles);
  let joined = await union.next();
  while (joined.done !== true) {
    yield 0.05 + 0.9 * joined.value;
    joined = await union.next();
  }
  const areaM2 = areaCm2(joined.value) / 1e4;
  const polygons = await shadowPolygons(joined.value, gathered.value);
  return ok({
    areaM2,
    polygons,
    geoJson: shadowGeoJson(polygons, { areaM2: Math.round(areaM2), ...sun }),
    points: points.flatMap(
      (point) => isInShadow({ point, aboveGroundM: 0, sun, date, obstacles }) ?? [],
    ),
    isCutShort: shadows.value.isCutShort,
    leftOutCount: outlines.leftOutCount,
  });
}
