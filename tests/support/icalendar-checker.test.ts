import { describe, expect, test } from 'vitest';

import { calendarEvents, unfolded } from './icalendar-checker.ts';

const file = (...lines: readonly string[]): string => `${lines.join('\r\n')}\r\n`;

const EVENT = [
  'BEGIN:VEVENT',
  'DTSTAMP:19960704T120000Z',
  'LAST-MODIFIED:19960704T120000Z',
  'SEQUENCE:0',
  'UID:uid1@example.com',
  'DTSTART:19960918T143000Z',
  'DTEND:19960920T220000Z',
  'STATUS:CONFIRMED',
  'SUMMARY:Networld+Interop Conference',
  'DESCRIPTION:Networld+Interop Conference',
  '  and Exhibit\\nAtlanta World Congress Center\\n',
  ' Atlanta\\, Georgia',
  'END:VEVENT',
];

const HEAD = [
  'BEGIN:VCALENDAR',
  'PRODID:-//xyz Corp//NONSGML PDA Calendar Version 1.0//EN',
  'VERSION:2.0',
];

/** The three-day conference of RFC 5545, section 4, with the two properties that are asked for beside it. */
const CONFERENCE = [...HEAD, ...EVENT, 'END:VCALENDAR'];

test('the standard’s own example is read as the standard explains it', () => {
  expect(calendarEvents(file(...CONFERENCE))).toMatchObject([
    {
      uid: 'uid1@example.com',
      summary: 'Networld+Interop Conference',
      description:
        'Networld+Interop Conference and Exhibit\nAtlanta World Congress Center\nAtlanta, Georgia',
      startMs: Date.UTC(1996, 8, 18, 14, 30),
      endMs: Date.UTC(1996, 8, 20, 22),
    },
  ]);
});

test('the folding example of RFC 5545, 3.1', () => {
  expect(
    unfolded(
      new TextEncoder().encode(
        file('DESCRIPTION:This is a lo', ' ng description', '  that exists on a long line.'),
      ),
    ),
  ).toEqual(['DESCRIPTION:This is a long description that exists on a long line.']);
});

const without = (name: string): readonly string[] =>
  CONFERENCE.filter((line) => !line.startsWith(`${name}:`));

const withLine = (...lines: readonly string[]): readonly string[] => [
  ...CONFERENCE.slice(0, -2),
  ...lines,
  ...CONFERENCE.slice(-2),
];

const exchanged = (from: string, to: string): readonly string[] =>
  CONFERENCE.map((line) => (line === from ? to : line));

describe('what the standard does not allow is found', () => {
  test.each([
    ['a line feed alone', CONFERENCE.join('\n'), /without a carriage return/],
    [
      'a carriage return alone',
      file(...CONFERENCE).replace('2.0\r\n', '2.0\r'),
      /without a line feed/,
    ],
    ['no end of the last line', CONFERENCE.join('\r\n'), /last line has no end/],
    ['a line of 76 octets', file(...withLine(`COMMENT:${'a'.repeat(68)}`)), /76 octets/],
    ['76 octets of fewer characters', file(...withLine(`COMMENT:${'ä'.repeat(34)}`)), /76 octets/],
    ['a control character', file(...withLine('COMMENT:a\u0007b')), /control character 7/],
    ['a line that is no property', file(...withLine('no colon here')), /no property/],
    ['a line without a name', file(...withLine(':value')), /without a name/],
    [
      'a comma not escaped',
      file(...exchanged(' Atlanta\\, Georgia', ' Atlanta, Georgia')),
      /unescaped ,/,
    ],
    [
      'a backslash before anything',
      file(...exchanged(' Atlanta\\, Georgia', ' Atlanta\\x')),
      /backslash before “x”/,
    ],
    [
      'a local time',
      file(...exchanged('DTSTART:19960918T143000Z', 'DTSTART:19960918T143000')),
      /no DATE-TIME with UTC/,
    ],
    [
      'a day that no month has',
      file(...exchanged('DTSTART:19960918T143000Z', 'DTSTART:19960931T143000Z')),
      /calendar/,
    ],
    [
      'an end at the start',
      file(...exchanged('DTEND:19960920T220000Z', 'DTEND:19960918T143000Z')),
      /not later/,
    ],
    ['a status of its own', file(...exchanged('STATUS:CONFIRMED', 'STATUS:MAYBE')), /STATUS MAYBE/],
    ['a broken sequence', file(...exchanged('SEQUENCE:0', 'SEQUENCE:1.5')), /SEQUENCE 1.5/],
    ['a place out of range', file(...withLine('GEO:91;0')), /GEO 91/],
    ['a place with a comma', file(...withLine('GEO:45.6,13.7')), /GEO 45/],
    ['a summary twice', file(...withLine('SUMMARY:Again')), /SUMMARY more than once/],
    ['no UID', file(...without('UID')), /no UID/],
    ['no DTSTAMP', file(...without('DTSTAMP')), /no DTSTAMP/],
    ['no version', file(...without('VERSION')), /version/],
    ['no product', file(...without('PRODID')), /no PRODID/],
    ['no event', file(...HEAD, 'END:VCALENDAR'), /without a component/],
    ['an event that does not end', file(...without('END')), /without an end/],
    ['an event outside', file(...EVENT, ...CONFERENCE), /begins where it cannot/],
    ['the same event twice', file(...HEAD, ...EVENT, ...EVENT, 'END:VCALENDAR'), /one UID/],
    [
      'a method without an organizer',
      file(...HEAD, 'METHOD:PUBLISH', ...EVENT, 'END:VCALENDAR'),
      /no ORGANIZER/,
    ],
  ])('%s', (_, text, words) => {
    expect(() => calendarEvents(text)).toThrow(words);
  });
});
