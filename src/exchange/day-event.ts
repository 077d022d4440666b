import type { GeoPoint } from '../core/place/geo-point.ts';
import { isZone } from '../core/units/civil-time.ts';
import { fail, ok, type Result } from '../core/units/result.ts';

/** One entry of a shoot's day as it leaves, whatever is to stay already left out. */
export type DayEvent = {
  /** 1 to 80 letters, digits, - and _; the same entry keeps it from issue to issue. */
  readonly id: string;
  readonly title: string;
  /** Epoch milliseconds of the years 1900 to 2200. */
  readonly startMs: number;
  /** Not before the start; at the start for a moment. */
  readonly endMs: number;
  /** Of the place, IANA. */
  readonly zone: string;
  /** '' where none is to be told. */
  readonly place: string;
  /** Null where none is known or it is to stay. */
  readonly position: GeoPoint | null;
  readonly description: string;
};

/** The events in the order of the day, or one sentence about the first that cannot be told to others. */
export function checkedDay(events: readonly DayEvent[]): Result<readonly DayEvent[], string> {
  const ids = new Set<string>();
  for (const event of events) {
    const fault = idFault(event.id, ids) ?? timeFault(event) ?? placeFault(event);
    if (fault !== null) return fail(`${called(event)}: ${fault}.`);
    ids.add(event.id);
  }
  return ok(events.toSorted(byTime));
}

const called = ({ title, id }: DayEvent): string =>
  title.trim() === '' ? `The entry ${id.slice(0, 80)}` : `“${title.trim().slice(0, 80)}”`;

const ID = /^[A-Za-z0-9_-]{1,80}$/;

const idFault = (id: string, taken: ReadonlySet<string>): string | null => {
  if (!ID.test(id) || id in Object.prototype)
    return `expected an id of up to 80 letters, digits, - and _, found “${id.slice(0, 80)}”`;
  return taken.has(id) ? `the id ${id} is that of another entry; expected one of its own` : null;
};

const FIRST_MS = Date.UTC(1900, 0);
const END_MS = Date.UTC(2200, 0);

const timeFault = ({ startMs, endMs, zone }: DayEvent): string | null => {
  if (!isZone(zone))
    return `expected a time zone such as Europe/Rome, found “${zone.slice(0, 80)}”`;
  for (const instantMs of [startMs, endMs])
    if (!(instantMs >= FIRST_MS && instantMs < END_MS))
      return `expected times of the years 1900 to 2199, found ${instantText(instantMs)}`;
  return endMs < startMs
    ? `it ends at ${instantText(endMs)}, before it starts at ${instantText(startMs)}`
    : null;
};

const instantText = (instantMs: number): string =>
  Math.abs(instantMs) <= 8.64e15 ? new Date(instantMs).toISOString() : `${instantMs} ms`;

const placeFault = ({ position }: DayEvent): string | null => {
  if (position === null) return null;
  const { latitudeDeg, longitudeDeg } = position;
  return Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180
    ? null
    : `expected a latitude of −90° to 90° and a longitude of −180° to 180°, found ${latitudeDeg}° and ${longitudeDeg}°`;
};

const byTime = (one: DayEvent, other: DayEvent): number =>
  one.startMs - other.startMs || one.endMs - other.endMs || (one.id < other.id ? -1 : 1);
