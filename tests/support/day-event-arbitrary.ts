import fc from 'fast-check';

import type { DayEvent } from '../../src/exchange/day-event.ts';

/** Whole hours and not, with and without clock changes, east and west. */
export const ZONES = [
  'Europe/Rome',
  'America/New_York',
  'America/St_Johns',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Pacific/Apia',
  'Pacific/Chatham',
  'UTC',
] as const;

/** Any characters at all, and often those that files give a meaning. */
export const anyText = fc
  .array(
    fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.constantFrom(
        '\r\n',
        '\n',
        '\\n',
        ',',
        ';',
        ':',
        '"',
        '\\',
        '=1+1',
        '\u2028',
        '\0',
        '\uD83C',
        'BEGIN:VEVENT',
        '🎻',
        'ä',
        ' ',
        '\t',
        '<&>',
      ),
    ),
    { maxLength: 12 },
  )
  .map((pieces) => pieces.join(''));

const position = fc.record({
  latitudeDeg: fc.double({ min: -90, max: 90, noNaN: true }),
  longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
});

const event = fc
  .record({
    id: fc.stringMatching(/^[A-Za-z0-9_-]{1,30}$/).filter((id) => !(id in Object.prototype)),
    title: anyText,
    startMs: fc.integer({ min: Date.UTC(1970, 0), max: Date.UTC(2100, 0) }),
    lengthMs: fc.oneof(fc.constant(0), fc.nat(36 * 3_600_000)),
    zone: fc.constantFrom(...ZONES),
    place: anyText,
    position: fc.option(position),
    description: anyText,
  })
  .map(({ lengthMs, ...rest }): DayEvent => ({ ...rest, endMs: rest.startMs + lengthMs }));

/** Events with ids of their own, in no order. */
export const dayArbitrary = (
  constraints: { readonly minLength?: number } = {},
): fc.Arbitrary<readonly DayEvent[]> =>
  fc.uniqueArray(event, { selector: ({ id }) => id, maxLength: 6, ...constraints });

/** A plain event to be changed in tests. */
export const plainEvent = (changes: Partial<DayEvent> = {}): DayEvent => ({
  id: 'pier-shoot',
  title: 'Quartet on the pier',
  startMs: Date.UTC(2027, 4, 14, 14, 30),
  endMs: Date.UTC(2027, 4, 14, 15, 10),
  zone: 'Europe/Rome',
  place: 'Pier',
  position: { latitudeDeg: 45.6503, longitudeDeg: 13.7571 },
  description: 'Key at the left',
  ...changes,
});
