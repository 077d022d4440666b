import type { Spot } from '../../../../core/plan/shoot.ts';
import type { SetupColumn } from '../../../../core/plan/setup-column.ts';
import { clockTime } from '../../../../core/units/civil-time.ts';
import { evText, spreadText, tenths } from '../../../ui/figure-text.ts';
import type { HoldWindow } from '../../../../core/plan/hold-windows.ts';
import { FOOT_TRAFFIC_WORDS, PERMISSION_WORDS, SHELTER_WORDS } from '../site/site-words.ts';
import type { SunDay } from '../sun-day.ts';

export const COMPARED = [
  { key: 'first-sun', title: 'First sun' },
  { key: 'last-sun', title: 'Sun leaves' },
  { key: 'window', title: 'Lights hold the sky' },
  { key: 'sky', title: 'Mean sky in frame' },
  { key: 'evenness', title: 'Dark to bright' },
  { key: 'walk-in', title: 'Walk-in' },
  { key: 'permission', title: 'Permission' },
  { key: 'foot-traffic', title: 'Foot traffic' },
  { key: 'shelter', title: 'Shelter' },
  { key: 'parking', title: 'Parking' },
] as const;

export type ComparedKey = (typeof COMPARED)[number]['key'];

export type ComparedCell = {
  readonly text: string;
  /** Smaller comes first; null where nothing is known, and last in either direction. */
  readonly rank: number | string | null;
};

export type ComparisonRow = {
  readonly spotId: string;
  readonly name: string;
  readonly cells: Readonly<Record<ComparedKey, ComparedCell>>;
};

export type ComparedDay = { readonly column: SetupColumn; readonly windows: readonly HoldWindow[] };

const MS_PER_MIN = 60_000;

/** What matters of one spot on one date; the day is null until its column has come. */
export function comparisonRow(
  spotId: string,
  spot: Spot,
  sun: SunDay,
  day: ComparedDay | 'no-lights' | null,
): ComparisonRow {
  const { directSun } = sun.windows;
  const zone = spot.zone;
  return {
    spotId,
    name: spot.name,
    cells: {
      'first-sun': clockCell(directSun[0]?.fromMs, zone),
      'last-sun': clockCell(directSun.at(-1)?.toMs, zone),
      ...windowCells(day, zone),
      'walk-in': { text: `${spot.walkInMin} min`, rank: spot.walkInMin },
      permission: {
        text: PERMISSION_WORDS[spot.permission],
        rank: rankOf(['granted', 'asked', 'unknown', 'refused'], spot.permission),
      },
      'foot-traffic': {
        text: FOOT_TRAFFIC_WORDS[spot.footTraffic],
        rank:
          spot.footTraffic === 'unknown'
            ? null
            : rankOf(['quiet', 'some', 'busy'], spot.footTraffic),
      },
      shelter: {
        text: SHELTER_WORDS[spot.shelter],
        rank: spot.shelter === 'unknown' ? null : rankOf(['full', 'partial', 'none'], spot.shelter),
      },
      parking: { text: spot.parkingNote || 'nothing noted', rank: spot.parkingNote || null },
    },
  };
}

function windowCells(
  day: ComparedDay | 'no-lights' | null,
  zone: string,
): Pick<ComparisonRow['cells'], 'window' | 'sky' | 'evenness'> {
  if (day === null) return alike('…');
  if (day === 'no-lights') return alike('no setup here');
  const { windows, column } = day;
  if (windows.length === 0) return alike('at no minute');
  const minutes = windows.reduce((sum, { fromMs, toMs }) => sum + (toMs - fromMs), 0) / MS_PER_MIN;
  const meanEv = meanInside(windows, column, ({ meanEv: ev }) => ev);
  const spread = meanInside(windows, column, ({ frameSpreadStops }) => frameSpreadStops);
  const evenness = meanInside(windows, column, ({ brightEv, darkEv }) =>
    brightEv.map((bright, at) => bright - (darkEv[at] ?? NaN)),
  );
  return {
    window: {
      text: windows
        .map(({ fromMs, toMs }) => `${clockTime(fromMs, zone)} to ${clockTime(toMs, zone)}`)
        .join(', '),
      // The longest first.
      rank: -minutes,
    },
    sky:
      meanEv === null
        ? NO_SKY
        : { text: `${evText(meanEv)} ${spreadText(spread ?? NaN)}`, rank: meanEv },
    evenness: evenness === null ? NO_SKY : { text: `${tenths(evenness)} stops`, rank: evenness },
  };
}

const NO_SKY: ComparedCell = { text: 'no sky in the frame', rank: null };

const alike = (text: string): Pick<ComparisonRow['cells'], 'window' | 'sky' | 'evenness'> => {
  const cell = { text, rank: null };
  return { window: cell, sky: cell, evenness: cell };
};

/** Mean over the column's steps inside the windows; the nearest step where a window holds none. */
function meanInside(
  windows: readonly HoldWindow[],
  column: SetupColumn,
  pick: (column: SetupColumn) => Float64Array,
): number | null {
  const values = pick(column);
  const inside = [...column.instantMs.keys()].filter((at) =>
    windows.some(({ fromMs, toMs }) => {
      const ms = column.instantMs[at] ?? NaN;
      return ms >= fromMs && ms <= toMs;
    }),
  );
  const steps = inside.length > 0 ? inside : [nearestStep(column, windows[0]?.fromMs ?? NaN)];
  const finite = steps.map((at) => values[at] ?? NaN).filter(Number.isFinite);
  return finite.length === 0 ? null : finite.reduce((sum, value) => sum + value, 0) / finite.length;
}

const nearestStep = ({ instantMs }: SetupColumn, ms: number): number =>
  instantMs.reduce(
    (nearest, stepMs, at) =>
      Math.abs(stepMs - ms) < Math.abs((instantMs[nearest] ?? NaN) - ms) ? at : nearest,
    0,
  );

const clockCell = (ms: number | undefined, zone: string): ComparedCell =>
  ms === undefined
    ? { text: 'none on this date', rank: null }
    : { text: clockTime(ms, zone), rank: ms };

const rankOf = <Value extends string>(order: readonly Value[], value: Value): number =>
  order.indexOf(value);

/** Rows by one column; what is not known stays last, equals keep the spots' own order. */
export function sortedRows(
  rows: readonly ComparisonRow[],
  { key, up }: { readonly key: ComparedKey | 'spot'; readonly up: boolean },
): readonly ComparisonRow[] {
  const rank = (row: ComparisonRow): number | string | null =>
    key === 'spot' ? row.name : row.cells[key].rank;
  return rows.toSorted((first, second) => {
    const [one, other] = [rank(first), rank(second)];
    if (one === null || other === null) return Number(one === null) - Number(other === null);
    const way =
      typeof one === 'string' && typeof other === 'string'
        ? one.localeCompare(other, 'en')
        : Number(one) - Number(other);
    return up ? way : -way;
  });
}
