import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { jsonBreak } from '../../src/exchange/json-break.ts';

/** The judge is the machine's own JSON.parse. */
const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe('where a text stops being JSON', () => {
  test('JSON of any kind is whole', () => {
    fc.assert(
      fc.property(fc.json(), fc.constantFrom('', ' ', '\n\t'), (text, space) => {
        expect(jsonBreak(`${space}${text}${space}`)).toBeNull();
      }),
    );
  });

  test('an object cut anywhere breaks off at its end', () => {
    fc.assert(
      fc.property(
        fc.json().map((text) => `{"a":${text}}`),
        fc.double({ min: 0, max: 0.9999, noNaN: true }),
        (text, share) => {
          const cut = text.slice(0, Math.floor(text.length * share));
          expect(jsonBreak(cut)).toEqual({ index: cut.length, atEnd: true });
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('it finds a break exactly where the machine refuses', () => {
    const scraps = fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"',
      '"a"',
      '\\',
      '\\u00',
      '1',
      '-',
      '0',
      '.5',
      'e9',
      'true',
      'nul',
      ' ',
      '\u0001',
      '\u00a0',
    );
    fc.assert(
      fc.property(
        fc.array(scraps, { maxLength: 8 }).map((parts) => parts.join('')),
        (text) => {
          expect(jsonBreak(text) === null).toBe(isJson(text));
        },
      ),
      { numRuns: 20_000 },
    );
  });

  test('what is written before a break that is not at the end could have gone on well', () => {
    const scraps = fc.constantFrom('{', '}', '[', ']', ',', ':', '"a"', '1', 'true', 'x');
    fc.assert(
      fc.property(
        fc.array(scraps, { maxLength: 8 }).map((parts) => parts.join('')),
        (text) => {
          const at = jsonBreak(text);
          if (at === null || at.atEnd) return;
          const before = jsonBreak(text.slice(0, at.index));
          expect(before === null || before.atEnd).toBe(true);
        },
      ),
      { numRuns: 5000 },
    );
  });
});
