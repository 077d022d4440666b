import type { Waypoint } from '../../core/plan/waypoint.ts';
import { wrapDeg360 } from '../../core/units/angle.ts';
import { fail, ok } from '../../core/units/result.ts';
import { checkedPosition, writtenNumber } from './checked-position.ts';
import { plainName, plainNote } from './plain-text.ts';
import type { ReadWaypoints, Skipped } from './waypoint-format.ts';

/** A waypoint as its file writes it, nothing checked yet. */
export type WrittenWaypoint = {
  /** What to call it where it has no name: 'waypoint 3', 'row 12'. */
  readonly place: string;
  readonly name: string | null;
  readonly latitude: string | null;
  readonly longitude: string | null;
  readonly elevation: string | null;
  readonly note: string | null;
  readonly bearing: string | null;
  /** ISO 8601. */
  readonly time: string | null;
};

export const MAX_WAYPOINTS = 5000;

/** Checks every waypoint of a file; `of` names the file's kind where none of them can be used. */
export function collectWaypoints({
  of,
  written,
  skipped = [],
  notes = [],
}: {
  readonly of: string;
  readonly written: readonly WrittenWaypoint[];
  readonly skipped?: readonly Skipped[];
  readonly notes?: readonly string[];
}): ReadWaypoints {
  const waypoints: Waypoint[] = [];
  const unusable: Skipped[] = [];
  const lost = { elevation: 0, bearing: 0, time: 0 };
  let tooMany = 0;
  for (const one of written) {
    if (waypoints.length === MAX_WAYPOINTS) {
      tooMany += 1;
      continue;
    }
    const name = plainName(one.name);
    const position = checkedPosition(writtenNumber(one.latitude), writtenNumber(one.longitude), [
      one.latitude ?? '',
      one.longitude ?? '',
    ]);
    if (!position.ok) {
      unusable.push({ what: name ?? one.place, why: position.problem });
      continue;
    }
    const figures = {
      elevation: elevationM(one.elevation),
      bearing: bearingDeg(one.bearing),
      time: instantMs(one.time),
    };
    for (const key of ['elevation', 'bearing', 'time'] as const)
      if (figures[key] === null && (one[key] ?? '').trim() !== '') lost[key] += 1;
    waypoints.push({
      name,
      latitudeDeg: position.value.latitudeDeg,
      longitudeDeg: position.value.longitudeDeg,
      elevationM: figures.elevation,
      note: plainNote(one.note),
      bearingDeg: figures.bearing,
      takenAtMs: figures.time,
    });
  }
  const left = [...skipped, ...unusable];
  if (waypoints.length === 0) return fail(noneWords(of, left));
  return ok({
    waypoints,
    skipped: left,
    notes: [
      ...notes,
      ...(tooMany === 0
        ? []
        : [
            `It holds ${written.length} waypoints: the first ${MAX_WAYPOINTS} usable are taken, ${tooMany} after them are not.`,
          ]),
      ...lostWords(lost.elevation, 'elevation', 'expected metres from −450 to 9000'),
      ...lostWords(lost.bearing, 'bearing', 'expected degrees from −180 to 360'),
      ...lostWords(lost.time, 'time', 'expected a date and clock time with its offset from UTC'),
    ],
  });
}

const noneWords = (of: string, left: readonly Skipped[]): string => {
  const [first] = left;
  return first === undefined
    ? `Expected waypoints, found none in ${of}.`
    : `Expected waypoints, found none in ${of} that can be used. ${first.what}: ${first.why}${left.length === 1 ? '' : ` And ${left.length - 1} more.`}`;
};

const lostWords = (count: number, what: string, expected: string): readonly string[] =>
  count === 0 ? [] : [`${count} × ${what} left out: ${expected}.`];

const within = (value: number | null, least: number, most: number): number | null =>
  value !== null && value >= least && value <= most ? value : null;

const elevationM = (text: string | null): number | null => within(writtenNumber(text), -450, 9000);

const bearingDeg = (text: string | null): number | null => {
  const bearing = within(writtenNumber(text), -180, 360);
  return bearing === null ? null : wrapDeg360(bearing);
};

const ISO_INSTANT =
  /^\d{4}-\d\d-\d\d[T ]\d\d:\d\d(?::\d\d(?:\.\d{1,9})?)?(?:Z|[+-]\d\d(?::?\d\d)?)$/i;

/** Of the years 1900 to 2200. */
const instantMs = (text: string | null): number | null => {
  const iso = (text ?? '').trim();
  if (!ISO_INSTANT.test(iso)) return null;
  const withColon = iso
    .replace(' ', 'T')
    .replace(/([+-]\d\d):?(\d\d)?$/, (_, hours, minutes) => `${hours}:${minutes ?? '00'}`);
  return within(Date.parse(withColon), -2_208_988_800_000, 7_258_118_399_999);
};
