import { cosDeg, sinDeg, tanDeg } from '../units/angle.ts';
import { fail, ok, type Result } from '../units/result.ts';
import { lightPassed } from './obstacle.ts';
import type { ShadowOutline, ShadowOutlines } from './shadow-outlines.ts';

/** With the sun lower, shadows are drawn as long as with the sun here: 57 times the height. */
export const LOWEST_SHADOW_SUN_DEG = 1;

export type ShadowSun = {
  /** Clockwise from true north. */
  readonly azimuthDeg: number;
  /** Of the disc's centre; its half degree would soften every edge. */
  readonly apparentAltitudeDeg: number;
};

/**
 * Shadows that let the same share of the light through, as rings for one path filled by the
 * nonzero rule: nowhere do they turn round a point less than zero times, so that shadows over
 * shadows are no darker than one, and a courtyard that another shadow reaches is dark.
 */
export type ShadowGroup = {
  /** 0 to 0.95, in steps of 0.05. */
  readonly passes: number;
  /** Longitude and latitude of corner after corner, degrees; longitudes may pass ±180. */
  readonly coordinates: Float64Array;
  /** For each ring the number of corners up to its end. */
  readonly ringEnds: Uint32Array;
  /** For each outline the number of rings up to its end. */
  readonly outlineEnds: Uint32Array;
};

export type Shadows = {
  /** The darkest first. */
  readonly groups: readonly ShadowGroup[];
  /** The cotangent of the sun's altitude. */
  readonly lengthPerHeight: number;
  /** The sun stands lower than shadows are drawn for. */
  readonly isCutShort: boolean;
};

export type ShadowProblem = { readonly kind: 'sun-down' };

const PASS_STEPS = 20;

/**
 * The shadows of outlines at one position of the sun, each on level ground at its own foot: height
 * times the cotangent of the altitude long, away from the sun. A building darkens its footprint as
 * well; a crown that begins above the ground has its shadow apart from the trunk's foot.
 */
export function shadowsAt(
  { outlines }: Pick<ShadowOutlines, 'outlines'>,
  { sun, date }: { readonly sun: ShadowSun; readonly date: string },
): Result<Shadows, ShadowProblem> {
  if (!(sun.apparentAltitudeDeg > 0)) return fail({ kind: 'sun-down' });
  const altitudeDeg = Math.max(sun.apparentAltitudeDeg, LOWEST_SHADOW_SUN_DEG);
  const lengthPerHeight = 1 / tanDeg(altitudeDeg);
  const eastPerHeight = -sinDeg(sun.azimuthDeg) * lengthPerHeight;
  const northPerHeight = -cosDeg(sun.azimuthDeg) * lengthPerHeight;

  const levels = Uint8Array.from(outlines, ({ obstacle, latitudeDeg }) =>
    Math.round(PASS_STEPS * lightPassed(obstacle, { date, latitudeDeg })),
  );
  const sheets = sheetsFor(outlines, levels);
  for (const [index, outline] of outlines.entries()) {
    const sheet = sheets[levels[index] ?? PASS_STEPS];
    if (sheet === undefined) continue;
    const { heightM, crownBaseM } = outline.obstacle;
    const baseM = Math.min(Math.max(crownBaseM, 0), heightM);
    const eastDegPerM = eastPerHeight / outline.eastM;
    const northDegPerM = northPerHeight / outline.northM;
    castShadow(sheet, outline, {
      base: [baseM * eastDegPerM, baseM * northDegPerM],
      sweep: [(heightM - baseM) * eastDegPerM, (heightM - baseM) * northDegPerM],
    });
    sheet.outlineEnds[sheet.outlineCount] = sheet.ringCount;
    sheet.outlineCount += 1;
  }
  return ok({
    groups: sheets.flatMap((sheet, level) =>
      sheet.ringCount === 0
        ? []
        : [
            {
              passes: level / PASS_STEPS,
              coordinates: sheet.coordinates.subarray(0, 2 * sheet.cornerCount),
              ringEnds: sheet.ringEnds.subarray(0, sheet.ringCount),
              outlineEnds: sheet.outlineEnds.subarray(0, sheet.outlineCount),
            },
          ],
    ),
    lengthPerHeight,
    isCutShort: sun.apparentAltitudeDeg < LOWEST_SHADOW_SUN_DEG,
  });
}

/** One group while it is being written. */
type Sheet = {
  readonly coordinates: Float64Array;
  readonly ringEnds: Uint32Array;
  readonly outlineEnds: Uint32Array;
  cornerCount: number;
  ringCount: number;
  outlineCount: number;
};

/** Room for every ring itself and for a quadrangle from each of its edges. */
function sheetsFor(outlines: readonly ShadowOutline[], levels: Uint8Array): readonly Sheet[] {
  const corners = new Uint32Array(PASS_STEPS);
  const rings = new Uint32Array(PASS_STEPS);
  const counts = new Uint32Array(PASS_STEPS);
  for (const [index, outline] of outlines.entries()) {
    const level = levels[index] ?? PASS_STEPS;
    if (level >= PASS_STEPS) continue;
    counts[level] = (counts[level] ?? 0) + 1;
    for (const ring of outline.rings) {
      const count = ring.length / 2;
      corners[level] = (corners[level] ?? 0) + 5 * count;
      rings[level] = (rings[level] ?? 0) + 1 + count;
    }
  }
  return Array.from(corners, (count, level) => ({
    coordinates: new Float64Array(2 * count),
    ringEnds: new Uint32Array(rings[level] ?? 0),
    outlineEnds: new Uint32Array(counts[level] ?? 0),
    cornerCount: 0,
    ringCount: 0,
    outlineCount: 0,
  }));
}

/** Degrees east and north. */
type Shift = readonly [eastDeg: number, northDeg: number];

/**
 * What an outline darkens while it slides from the shadow of its lower edge to that of its top. A
 * ring stays one ring: edges that lead the way at the end, the others at the start, joined where
 * they meet; it turns round every point as often as the ring and a quadrangle swept by each leading
 * edge do together. What has no inside is swept edge by edge.
 */
function castShadow(
  sheet: Sheet,
  { rings, isSolid }: ShadowOutline,
  shadow: { readonly base: Shift; readonly sweep: Shift },
): void {
  for (const ring of rings)
    if (isSolid) sweepRing(sheet, ring, shadow);
    else sweepLine(sheet, ring, shadow);
}

/** Twice the area that the edge before a corner sweeps: negative where it leads on a solid. */
function turnOfEdge(ring: Float64Array, at: number, sweep: Shift): number {
  const before = at === 0 ? ring.length - 2 : at - 2;
  return (
    ((ring[at] ?? NaN) - (ring[before] ?? NaN)) * sweep[1] -
    ((ring[at + 1] ?? NaN) - (ring[before + 1] ?? NaN)) * sweep[0]
  );
}

function sweepRing(
  sheet: Sheet,
  ring: Float64Array,
  { base, sweep }: { readonly base: Shift; readonly sweep: Shift },
): void {
  let leads = turnOfEdge(ring, 0, sweep) < 0;
  for (let at = 0; at < ring.length; at += 2) {
    const east = (ring[at] ?? NaN) + base[0];
    const north = (ring[at + 1] ?? NaN) + base[1];
    const nextLeads = turnOfEdge(ring, at + 2 === ring.length ? 0 : at + 2, sweep) < 0;
    putCorner(sheet, leads ? east + sweep[0] : east, leads ? north + sweep[1] : north);
    if (nextLeads !== leads)
      putCorner(sheet, nextLeads ? east + sweep[0] : east, nextLeads ? north + sweep[1] : north);
    leads = nextLeads;
  }
  endRing(sheet);
}

function sweepLine(
  sheet: Sheet,
  line: Float64Array,
  { base, sweep }: { readonly base: Shift; readonly sweep: Shift },
): void {
  for (let at = 2; at < line.length; at += 2) {
    const turn = turnOfEdge(line, at, sweep);
    if (turn === 0) continue;
    const fromEast = (line[at - 2] ?? NaN) + base[0];
    const fromNorth = (line[at - 1] ?? NaN) + base[1];
    const toEast = (line[at] ?? NaN) + base[0];
    const toNorth = (line[at + 1] ?? NaN) + base[1];
    putCorner(sheet, fromEast, fromNorth);
    if (turn > 0) putCorner(sheet, toEast, toNorth);
    else putCorner(sheet, fromEast + sweep[0], fromNorth + sweep[1]);
    putCorner(sheet, toEast + sweep[0], toNorth + sweep[1]);
    if (turn > 0) putCorner(sheet, fromEast + sweep[0], fromNorth + sweep[1]);
    else putCorner(sheet, toEast, toNorth);
    endRing(sheet);
  }
}

function putCorner(sheet: Sheet, eastDeg: number, northDeg: number): void {
  sheet.coordinates[2 * sheet.cornerCount] = eastDeg;
  sheet.coordinates[2 * sheet.cornerCount + 1] = northDeg;
  sheet.cornerCount += 1;
}

function endRing(sheet: Sheet): void {
  sheet.ringEnds[sheet.ringCount] = sheet.cornerCount;
  sheet.ringCount += 1;
}
