import { ok, type Result } from '../../core/units/result.ts';
import { checkedDay, type DayEvent } from '../day-event.ts';

/** One entry as it was last told to calendars. */
export type CalendarEntry = {
  readonly event: DayEvent;
  /** 0 when first told, one more with every change (RFC 5545, 3.8.7.4). */
  readonly sequence: number;
  /** When it was first told or last changed, epoch milliseconds. */
  readonly revisedAtMs: number;
  /** Told before and no longer in the day. */
  readonly cancelled: boolean;
};

/** What a day's calendar says, to be kept for the next issue, plain data; entries by id. */
export type CalendarIssue = { readonly entries: Readonly<Record<string, CalendarEntry>> };

/**
 * The next issue of a day's calendar: what changed counts one up, what is unchanged stays as it was
 * told, what is gone is cancelled and stays so, what comes back is the same entry again. Without
 * the issue before (null), calendars that hold the day may take the entries for old ones.
 */
export function nextIssue({
  previous,
  events,
  issuedAtMs,
}: {
  readonly previous: CalendarIssue | null;
  readonly events: readonly DayEvent[];
  readonly issuedAtMs: number;
}): Result<CalendarIssue, string> {
  const day = checkedDay(events);
  if (!day.ok) return day;
  const told = new Map(Object.entries(previous?.entries ?? {}));
  const ids = new Set(day.value.map(({ id }) => id));
  const gone = [...told.values()].filter(({ event }) => !ids.has(event.id));
  const entries = [
    ...day.value.map((event) =>
      revised(told.get(event.id), event, { issuedAtMs, cancelled: false }),
    ),
    ...gone.map((entry) => revised(entry, entry.event, { issuedAtMs, cancelled: true })),
  ];
  return ok({ entries: Object.fromEntries(entries.map((entry) => [entry.event.id, entry])) });
}

const revised = (
  told: CalendarEntry | undefined,
  event: DayEvent,
  { issuedAtMs, cancelled }: { readonly issuedAtMs: number; readonly cancelled: boolean },
): CalendarEntry => {
  if (told === undefined) return { event, sequence: 0, revisedAtMs: issuedAtMs, cancelled };
  if (told.cancelled === cancelled && says(told.event) === says(event)) return told;
  return {
    event,
    sequence: told.sequence + 1,
    // A clock put back must not make the change older than what it changes.
    revisedAtMs: Math.max(issuedAtMs, told.revisedAtMs),
    cancelled,
  };
};

/** All that an event says, for comparing. */
const says = (event: DayEvent): string =>
  JSON.stringify([
    event.title,
    event.startMs,
    event.endMs,
    event.zone,
    event.place,
    event.position?.latitudeDeg ?? null,
    event.position?.longitudeDeg ?? null,
    event.description,
  ]);
