import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';

import { writeDayCsv } from '../../src/exchange/day-csv.ts';
import type { DayEvent } from '../../src/exchange/day-event.ts';
import { plainLine, plainLines } from '../../src/exchange/plain-lines.ts';
import { textOfCell } from '../../src/exchange/waypoints/csv-cells.ts';
import { dayArbitrary, plainEvent } from '../support/day-event-arbitrary.ts';
import { defined } from '../support/defined.ts';

const fileOf = (events: readonly DayEvent[]): string => {
  const file = writeDayCsv(events);
  if (!file.ok) throw new Error(file.problem);
  return file.value;
};

/** Records by the grammar of RFC 4180, section 2, and nothing but that grammar. */
const strictRecords = (text: string): readonly (readonly string[])[] => {
  const FIELD = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/y;
  const records: string[][] = [[]];
  while (FIELD.lastIndex < text.length) {
    const at = FIELD.lastIndex;
    const field = FIELD.exec(text);
    if (field === null) throw new Error(`no field at ${at}: ${text.slice(at, at + 40)}`);
    records.at(-1)?.push(field[1]?.replaceAll('""', '"') ?? field[2] ?? '');
    if (field[3] === '\r\n') records.push([]);
  }
  if (records.pop()?.length !== 0) throw new Error('the last record has no end');
  return records;
};

const rows = (events: readonly DayEvent[]): readonly (readonly string[])[] =>
  strictRecords(fileOf(events).replace(/^\uFEFF/, '')).slice(1);

describe('the day as a table', () => {
  test('one row per event, in the order of the day', () => {
    const solo = plainEvent({
      id: 'solo',
      title: 'Solo, "low" sun',
      startMs: Date.UTC(2027, 4, 14, 12),
      endMs: Date.UTC(2027, 4, 14, 12, 22, 30),
      place: '',
      position: null,
      description: 'First line\nsecond',
    });
    expect(fileOf([plainEvent(), solo])).toBe(
      [
        '\uFEFFdate,start,end,zone,start_utc,end_utc,minutes,title,place,latitude,longitude,description',
        '2027-05-14,14:00,14:22,Europe/Rome,2027-05-14T12:00:00.000Z,2027-05-14T12:22:30.000Z,22.5,"Solo, ""low"" sun",,,,"First line\nsecond"',
        '2027-05-14,16:30,17:10,Europe/Rome,2027-05-14T14:30:00.000Z,2027-05-14T15:10:00.000Z,40,Quartet on the pier,Pier,45.6503,13.7571,Key at the left',
        '',
      ].join('\r\n'),
    );
  });

  test('any day keeps RFC 4180, and every text is read back', () => {
    fc.assert(
      fc.property(dayArbitrary(), (events) => {
        const records = strictRecords(fileOf(events).replace(/^\uFEFF/, ''));
        expect(records.length).toBe(events.length + 1);
        for (const record of records) expect(record.length).toBe(12);
        const said = records.slice(1).map((record) => record.map(textOfCell));
        for (const event of events) {
          const row = said.find(
            (cells) =>
              Date.parse(cells[4] ?? '') === event.startMs &&
              cells[7] === plainLine(event.title) &&
              cells[11] === plainLines(event.description).trim(),
          );
          expect(row?.[8]).toBe(plainLine(event.place));
        }
      }),
    );
  });

  // Characters that begin a formula in a spreadsheet: OWASP, CSV Injection.
  test.each([
    '=',
    '+',
    '-',
    '@',
    '＝',
    '＋',
    '－',
    '＠',
    '\t=',
    '\r=',
    '\n=',
    ' =',
    '\0=',
    '\u200E=',
  ])('a text that begins with %j is no formula in any cell', (start) => {
    const text = `${start}HYPERLINK("http://example.com")`;
    const [row = []] = rows([plainEvent({ title: text, place: text, description: text })]);
    for (const cell of [row[7], row[8], row[11]])
      expect(cell).not.toMatch(/^[\s\0]*[=+\-@＝＋－＠]/);
  });

  test('a latitude south of the equator stays a number', () => {
    const [row = []] = rows([
      plainEvent({ position: { latitudeDeg: -33.9, longitudeDeg: -0.00000001 } }),
    ]);
    expect(row.slice(9, 11)).toEqual(['-33.9', '0']);
  });

  test('the hour that clocks show twice is told apart by the instants', () => {
    // Directive 2000/84/EC: the last Sunday of October, 01:00 UTC.
    const changeMs = Date.UTC(2027, 9, 31, 1);
    const both = [-1_800_000, 1_800_000].map((shift, at) =>
      plainEvent({ id: `e${at}`, startMs: changeMs + shift, endMs: changeMs + shift + 1_800_000 }),
    );
    const [first = [], second = []] = rows(both);
    expect([first[1], second[1]]).toEqual(['02:30', '02:30']);
    for (const [at, row] of [first, second].entries())
      expect(DateTime.fromISO(defined(row[4])).toMillis()).toBe(defined(both[at]).startMs);
  });

  test('an unsound day is refused with its fault', () => {
    expect(writeDayCsv([plainEvent({ zone: 'Nowhere' })])).toEqual({
      ok: false,
      problem: '“Quartet on the pier”: expected a time zone such as Europe/Rome, found “Nowhere”.',
    });
  });
});
