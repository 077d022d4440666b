import type { SkyCondition } from '../../../core/daylight/sky-condition.ts';
import type { SetupColumn } from '../../../core/plan/setup-column.ts';
import type { InstantSpan } from '../../../core/spot/sun-windows.ts';
import { SUN_EVENT_ALTITUDE_DEG } from '../../../core/sun-moon/sun-events.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import { CONDITION_NAMES } from '../../ui/condition-names.ts';
import { tenths } from '../../ui/figure-text.ts';
import { leastShort, type HoldWindow } from '../../../core/plan/hold-windows.ts';
import type { SunDay } from './sun-day.ts';
import { verdictWords } from '../../ui/verdict-text.ts';

/** A line of 'light on this day'. */
export type LightLine = {
  readonly name: string;
  readonly figure: string;
  readonly value: string;
  readonly note: string | null;
};

const MS_PER_MIN = 60_000;
/** Sunrise and first sun this close together are one event. */
const SAME_MS = 90_000;

/** Rise and set on a level horizon, then direct sun over this skyline. */
export function sunLines(sun: SunDay, zone: string, condition: SkyCondition): readonly LightLine[] {
  const { events, windows, day } = sun;
  const at = (ms: number | null, otherwise: string): string =>
    ms === null ? otherwise : clockTime(ms, zone);
  const isUp = sun.noonAltitudeDeg > SUN_EVENT_ALTITUDE_DEG.riseSet;
  const noRise = isUp ? 'none: it is up already' : 'none: the sun stays down';
  const noSet = isUp ? 'none: the sun stays up' : 'none: the sun stays down';
  const first = windows.directSun[0];
  const last = windows.directSun.at(-1);
  const overcast = condition.endsWith('overcast');
  const gaps = windows.directSun.slice(1).map((span, index) => {
    const before = windows.directSun[index];
    return before === undefined ? '' : spanText({ fromMs: before.toMs, toMs: span.fromMs }, zone);
  });
  return [
    line('Sunrise, level horizon', 'sunrise', at(events.sunriseMs, noRise)),
    line('Sunset, level horizon', 'sunset', at(events.sunsetMs, noSet)),
    line(
      'First direct sun',
      'first-sun',
      first === undefined
        ? 'no direct sun reaches the spot on this date'
        : first.fromMs === day.startMs
          ? 'from the start of the date'
          : clockTime(first.fromMs, zone),
      first !== undefined && events.sunriseMs !== null && first.fromMs - events.sunriseMs > SAME_MS
        ? 'behind the skyline until then'
        : null,
    ),
    line(
      'Direct sun leaves',
      'sun-leaves',
      last === undefined
        ? 'there is none to leave'
        : last.toMs === day.endMs
          ? 'not before the date ends'
          : clockTime(last.toMs, zone),
      gaps.length > 0
        ? `behind the skyline ${gaps.join(', ')}`
        : overcast
          ? `where the sun stands; no beam under ${CONDITION_NAMES[condition]}`
          : condition === 'broken-cloud' && last !== undefined
            ? 'in the minutes when no cloud hides it'
            : null,
    ),
    line(
      'Sun in the frame',
      'sun-in-frame',
      windows.sunInFrame.length === 0
        ? 'never on this date'
        : windows.sunInFrame.map((span) => spanText(span, zone)).join(', '),
      windows.sunInFrame.length === 0 ? null : 'clips at any hold; flare and veil are not modelled',
    ),
  ];
}

/** When the lights of a setup hold the sky, and what ends it. */
export function holdLines(
  setupName: string,
  column: SetupColumn,
  windows: readonly HoldWindow[],
  zone: string,
): readonly LightLine[] {
  const last = windows.at(-1);
  const name = 'Lights hold the sky';
  if (last === undefined) {
    const closest = leastShort(column);
    const why =
      closest === null
        ? setupName
        : `${setupName}; closest at ${clockTime(closest.atMs, zone)}, short by ${tenths(closest.shortByStops)}: ${verdictWords(closest.verdict)}`;
    return [
      line(name, 'holds', 'at no minute of this date', why),
      line('Last usable minute', 'last-usable', 'there is none'),
    ];
  }
  return [
    line(
      name,
      'holds',
      windows.map((span) => holdText(span, zone)).join(', '),
      `${setupName}; by the middle of the spread`,
    ),
    line(
      'Last usable minute',
      'last-usable',
      last.endedBy === null ? 'not before the date ends' : clockTime(last.toMs, zone),
      last.endedBy === null ? null : `then ${verdictWords(last.endedBy)}`,
    ),
  ];
}

const line = (
  name: string,
  figure: string,
  value: string,
  note: string | null = null,
): LightLine => ({ name, figure, value, note });

/** A window's first whole minute and its last. */
const holdText = ({ fromMs, toMs }: InstantSpan, zone: string): string =>
  spanText({ fromMs: Math.ceil(fromMs / MS_PER_MIN) * MS_PER_MIN, toMs }, zone);

export const spanText = ({ fromMs, toMs }: InstantSpan, zone: string): string =>
  `${clockTime(fromMs, zone)} to ${clockTime(toMs, zone)}`;
