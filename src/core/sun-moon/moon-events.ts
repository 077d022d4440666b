import { dayBoundsMs } from '../units/civil-time.ts';
import { altitudeTrack, crossingsOf } from './altitude-crossings.ts';
import { moonDirection } from './moon-position.ts';
import type { PlaceDay } from './sun-events.ts';

/** Epoch milliseconds; null on a date without one, as happens about once a month. */
export type MoonEvents = { readonly moonriseMs: number | null; readonly moonsetMs: number | null };

const HOUR_MS = 3_600_000;
/** Refraction on the horizon by convention, 34′. [usnoRiseSet] */
const HORIZON_REFRACTION_DEG = 34 / 60;
/** The moon's radius in radii of the earth. [meeus1998, ch. 15] */
const MOON_RADIUS = 0.2725;

/**
 * First rise and first set of the moon's upper limb on the civil date in its zone, on a level
 * horizon at sea level. [usnoRiseSet]
 */
export const moonEvents = ({ date, zone, place }: PlaceDay): MoonEvents => {
  const { startMs, endMs } = dayBoundsMs(date, zone);
  const limbAboveHorizonDeg = (instantMs: number): number => {
    const moon = moonDirection(instantMs, place);
    return moon.trueAltitudeDeg + MOON_RADIUS * moon.horizontalParallaxDeg + HORIZON_REFRACTION_DEG;
  };
  if (!(endMs > startMs)) return { moonriseMs: null, moonsetMs: null };
  const track = altitudeTrack(limbAboveHorizonDeg, {
    startMs: startMs - HOUR_MS,
    endMs: endMs + HOUR_MS,
    stepMs: HOUR_MS,
  });
  const onDate = crossingsOf(track, 0).filter(
    ({ instantMs }) => instantMs >= startMs && instantMs < endMs,
  );
  const first = (direction: 'rising' | 'falling'): number | null =>
    onDate.find((crossing) => crossing.direction === direction)?.instantMs ?? null;
  return { moonriseMs: first('rising'), moonsetMs: first('falling') };
};
