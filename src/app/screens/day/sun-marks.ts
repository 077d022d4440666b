import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { altitudeTrack, crossingsOf } from '../../../core/sun-moon/altitude-crossings.ts';
import { sunEvents } from '../../../core/sun-moon/sun-events.ts';
import { sunPosition } from '../../../core/sun-moon/sun-position.ts';
import { dayBoundsMs } from '../../../core/units/civil-time.ts';

export type SunMark = {
  readonly ms: number;
  readonly text: string;
  /** Where there is little room. */
  readonly short: string;
};

const MS_PER_HOUR = 3_600_000;
const LOW_SUN_DEG = 6;

/** What the sun does over a date at a place, in order; true altitudes, level horizon. */
export function sunMarks(place: GeoPoint, date: string, zone: string): readonly SunMark[] {
  const events = sunEvents({ date, zone, place });
  const day = dayBoundsMs(date, zone);
  const altitudeDeg = (ms: number): number => sunPosition(ms, place).trueAltitudeDeg;
  const middleMs = events.solarNoonMs ?? (day.startMs + day.endMs) / 2;
  const track = altitudeTrack(altitudeDeg, {
    startMs: middleMs - 12 * MS_PER_HOUR,
    endMs: middleMs + 12 * MS_PER_HOUR,
    stepMs: MS_PER_HOUR / 2,
  });
  const noonText = `${Math.round(altitudeDeg(middleMs))}°`.replace('-', '−');
  const named: readonly (readonly [ms: number | null, text: string, short?: string])[] = [
    [events.astronomicalDawnMs, 'sun −18°'],
    [events.nauticalDawnMs, 'sun −12°'],
    [events.civilDawnMs, 'civil twilight −6°', 'civil −6°'],
    [events.sunriseMs, 'sunrise'],
    ...crossingsOf(track, LOW_SUN_DEG).map(({ instantMs }) => [instantMs, 'sun 6°'] as const),
    [events.solarNoonMs, `solar noon ${noonText}`, `noon ${noonText}`],
    [events.sunsetMs, 'sunset'],
    [events.civilDuskMs, 'civil twilight ends −6°', 'civil end −6°'],
    [events.nauticalDuskMs, 'sun −12°'],
    [events.astronomicalDuskMs, 'sun −18°'],
  ];
  return named
    .flatMap(([ms, text, short = text]) => (ms === null ? [] : [{ ms, text, short }]))
    .toSorted((one, other) => one.ms - other.ms);
}
