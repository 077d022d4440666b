/** What one click of a camera dial changes: a third or a half of a stop. */
export type DialStep = 'third' | 'half';

export const DIAL_STEP_STOPS = { third: 1 / 3, half: 1 / 2 } as const satisfies Record<
  DialStep,
  number
>;

/**
 * A nominal end value (f/1.2, 1/30, 30 s) lies up to 0.141 stop from the exact series, so a grid
 * value closer than this to an end is the end itself under its exact name. [iso517]
 */
const SAME_VALUE_STOPS = 0.15;

/**
 * The values a dial offers, in stops from the origin of its exact series, ascending: both ends as
 * stated, and between them every whole step of the series. [iso517]
 * The ends are never exceeded; `toStops` below `fromStops` gives the first end alone.
 */
export const dialScale = (dial: {
  readonly fromStops: number;
  readonly toStops: number;
  readonly stepStops: number;
}): number[] => {
  const { fromStops, toStops, stepStops } = dial;
  const values = [fromStops];
  const first = Math.ceil((fromStops + SAME_VALUE_STOPS) / stepStops);
  const last = Math.floor((toStops - SAME_VALUE_STOPS) / stepStops);
  for (let step = first; step <= last; step += 1) values.push(step * stepStops);
  if (toStops > fromStops + 1e-9) values.push(toStops);
  return values;
};

/** Whether a value lies on or between the ends, a nominal name counting as its exact value. */
export const isWithinDial = (
  valueStops: number,
  ends: { readonly fromStops: number; readonly toStops: number },
): boolean =>
  valueStops >= ends.fromStops - SAME_VALUE_STOPS && valueStops <= ends.toStops + SAME_VALUE_STOPS;

/** How many clicks a value lies from the origin of its series, to the nearest click. */
export const nearestClick = (valueStops: number, step: DialStep): number =>
  Math.round(valueStops / DIAL_STEP_STOPS[step] + 1e-9);
