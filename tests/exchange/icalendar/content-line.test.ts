import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { contentLine } from '../../../src/exchange/icalendar/content-line.ts';
import { textValue } from '../../../src/exchange/icalendar/text-value.ts';
import { plainLines } from '../../../src/exchange/plain-lines.ts';
import { anyText } from '../../support/day-event-arbitrary.ts';
import { physicalLines, property, textOf, unfolded } from '../../support/icalendar-checker.ts';

const octets = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('lines of at most 75 octets, RFC 5545, 3.1', () => {
  test('75 octets stay one line, 76 become two, the space of the second counted', () => {
    expect(contentLine('SUMMARY', 'a'.repeat(67))).toBe(`SUMMARY:${'a'.repeat(67)}\r\n`);
    expect(contentLine('SUMMARY', 'a'.repeat(68))).toBe(`SUMMARY:${'a'.repeat(67)}\r\n a\r\n`);
    const lines = physicalLines(octets(contentLine('SUMMARY', 'a'.repeat(67 + 74 + 1))));
    expect(lines.map(({ length }) => length)).toEqual([75, 75, 2]);
  });

  test.each([
    // RFC 3629, 3: octets of a character.
    ['two octets', 'ä', 2],
    ['three octets', '−', 3],
    ['four octets', '🎻', 4],
  ])('a character of %s goes to the next line whole', (_, character, size) => {
    expect(octets(character).length).toBe(size);
    for (let before = 67 - size; before <= 67; before += 1) {
      const folded = contentLine('SUMMARY', `${'a'.repeat(before)}${character}`);
      const isSplit = before + size > 67;
      expect(folded).toBe(`SUMMARY:${'a'.repeat(before)}${isSplit ? '\r\n ' : ''}${character}\r\n`);
    }
  });

  test('any text unfolds to what it was, and no line is too long', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const line = contentLine('DESCRIPTION', textValue(text));
        expect(unfolded(octets(line))).toEqual([`DESCRIPTION:${textValue(text)}`]);
      }),
    );
  });
});

describe('texts, RFC 5545, 3.3.11', () => {
  test.each([
    [
      'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.',
      String.raw`Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`,
    ],
    [
      'Networld+Interop Conference and Exhibit\nAtlanta World Congress Center\nAtlanta, Georgia',
      String.raw`Networld+Interop Conference and Exhibit\nAtlanta World Congress Center\nAtlanta\, Georgia`,
    ],
    [String.raw`C:\new; keep`, String.raw`C:\\new\; keep`],
  ])('%j', (text, value) => {
    expect(textValue(text)).toBe(value);
  });

  test.each([
    ['CR LF', 'Pier\r\nEND:VEVENT'],
    ['CR', 'Pier\rEND:VEVENT'],
    ['LF', 'Pier\nEND:VEVENT'],
    ['next line', 'Pier\u0085END:VEVENT'],
    ['line separator', 'Pier\u2028END:VEVENT'],
    ['paragraph separator', 'Pier\u2029END:VEVENT'],
    ['vertical tab', 'Pier\vEND:VEVENT'],
    ['form feed', 'Pier\fEND:VEVENT'],
  ])('a text cannot end its line with %s', (_, text) => {
    expect(textValue(text)).toBe(String.raw`Pier\nEND:VEVENT`);
  });

  test('any text is read as it was, without what no line can hold', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const [line = ''] = unfolded(octets(contentLine('SUMMARY', textValue(text))));
        expect(textOf(property(line).value)).toBe(plainLines(text));
      }),
    );
  });

  test('plain text stays letter by letter', () => {
    const text = 'Quartett „im Wind“ – 2½ Blenden, 45° N; 🎻\n\tTide: 0.4 m';
    expect(plainLines(text)).toBe(text);
  });
});
