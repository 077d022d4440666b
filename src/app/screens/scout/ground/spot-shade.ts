import type { GeoPoint } from '../../../../core/place/geo-point.ts';
import { isInShadow } from '../../../../core/skyline/in-shadow.ts';
import { leastDistanceM } from '../../../../core/skyline/least-distance.ts';
import { footAboveGroundM } from '../../../../core/skyline/obstacle.ts';
import { sunPosition } from '../../../../core/sun-moon/sun-position.ts';
import { tanDeg } from '../../../../core/units/angle.ts';
import type { Standing } from '../../../state/standing.ts';

const MS_PER_MIN = 60_000;
const MIN_PER_DAY = 1440;

/** Obstacles that rise less than this over the ground of the spot take no minute of sun from it. */
const LEAST_RISE_DEG = 0.2;

export type SpotShade =
  | { readonly kind: 'sun-down' }
  /** `untilMs` is the first minute without it; null where the sun sets behind it. */
  | { readonly kind: 'in-shadow'; readonly of: string; readonly untilMs: number | null }
  /** `fromMs` is the first minute of the next shadow; null where none comes before sunset. */
  | {
      readonly kind: 'in-sun';
      readonly next: { readonly of: string; readonly fromMs: number } | null;
    };

/** Those that may stand between a spot and the sun at some hour. */
export const nearEnough = (standing: readonly Standing[], place: GeoPoint): readonly Standing[] =>
  standing.filter(({ obstacle }) => {
    const riseM = obstacle.heightM + footAboveGroundM(obstacle, place);
    return riseM > leastDistanceM(obstacle.outline, place) * tanDeg(LEAST_RISE_DEG);
  });

type Shade = { readonly sunIsUp: boolean; readonly of: string | null };

/** Whose shadow the ground of a spot lies in at a minute, and for how long; to the minute. */
export function spotShade(asked: {
  readonly place: GeoPoint;
  readonly minuteMs: number;
  /** Civil date, for the leaves. */
  readonly date: string;
  readonly standing: readonly Standing[];
}): SpotShade {
  const shadeAt = shadeReader(asked);
  const now = shadeAt(asked.minuteMs);
  if (!now.sunIsUp) return { kind: 'sun-down' };
  for (let minute = 1; minute <= MIN_PER_DAY; minute += 1) {
    const atMs = asked.minuteMs + minute * MS_PER_MIN;
    const then = shadeAt(atMs);
    if (!then.sunIsUp) break;
    if (now.of === null && then.of !== null)
      return { kind: 'in-sun', next: { of: then.of, fromMs: atMs } };
    if (now.of !== null && then.of === null)
      return { kind: 'in-shadow', of: now.of, untilMs: atMs };
  }
  return now.of === null
    ? { kind: 'in-sun', next: null }
    : { kind: 'in-shadow', of: now.of, untilMs: null };
}

function shadeReader({
  place,
  date,
  standing,
}: {
  readonly place: GeoPoint;
  readonly date: string;
  readonly standing: readonly Standing[];
}): (instantMs: number) => Shade {
  const near = nearEnough(standing, place);
  return (instantMs) => {
    const sun = sunPosition(instantMs, place);
    if (!(sun.apparentAltitudeDeg > 0)) return { sunIsUp: false, of: null };
    const blocks = (some: readonly Standing[]): boolean => {
      const obstacles = some.map(({ obstacle }) => obstacle);
      return isInShadow({ point: place, aboveGroundM: 0, sun, date, obstacles })?.blocked === true;
    };
    const of = blocks(near) ? (near.find((one) => blocks([one]))?.name ?? null) : null;
    return { sunIsUp: true, of };
  };
}
