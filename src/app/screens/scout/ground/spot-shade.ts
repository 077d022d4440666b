import type { GeoPoint } from '../../../../core/place/geo-point.ts';
import { isInShadow } from '../../../../core/skyline/in-shadow.ts';
import { sunPosition } from '../../../../core/sun-moon/sun-position.ts';
import { mayHide, type NearStanding } from './near-standing.ts';

const MS_PER_MIN = 60_000;
const MIN_PER_DAY = 1440;

export type SpotShade =
  | { readonly kind: 'sun-down' }
  /** `untilMs` is the first minute without it; null where the sun sets behind it. */
  | { readonly kind: 'in-shadow'; readonly of: string; readonly untilMs: number | null }
  /** `fromMs` is the first minute of the next shadow; null where none comes before sunset. */
  | {
      readonly kind: 'in-sun';
      readonly next: { readonly of: string; readonly fromMs: number } | null;
    };

type Shade = { readonly sunIsUp: boolean; readonly of: string | null };

/** Whose shadow the ground of a spot lies in at a minute, and for how long; to the minute. */
export function spotShade(asked: {
  readonly place: GeoPoint;
  readonly minuteMs: number;
  /** Civil date, for the leaves. */
  readonly date: string;
  readonly near: readonly NearStanding[];
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
  near,
}: {
  readonly place: GeoPoint;
  readonly date: string;
  readonly near: readonly NearStanding[];
}): (instantMs: number) => Shade {
  return (instantMs) => {
    const sun = sunPosition(instantMs, place);
    if (!(sun.apparentAltitudeDeg > 0)) return { sunIsUp: false, of: null };
    const hiding = near.find(
      (one) =>
        mayHide(one, sun) &&
        isInShadow({
          point: place,
          aboveGroundM: 0,
          sun,
          date,
          obstacles: [one.standing.obstacle],
        })?.blocked === true,
    );
    return { sunIsUp: true, of: hiding?.standing.name ?? null };
  };
}
