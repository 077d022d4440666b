import fc from 'fast-check';

import type { Waypoint } from '../../src/core/plan/waypoint.ts';
import { angle, number, orNull, record } from './field-arbitraries.ts';

/** What breaks careless writers: markup, quotes, delimiters, formulas, line ends, other scripts. */
const PIECES = [
  'Pier',
  'a & b',
  '&amp;',
  '&lt;b&gt;',
  '5 < 6 > 4',
  '<3',
  ']]>',
  '"quoted"',
  "it's",
  ',',
  ';',
  '=1+1',
  '-2',
  '@now',
  '+39',
  "'=x",
  'Größe',
  '桟橋',
  '🌅',
  '#',
  '%41',
];

const pieces = (between: readonly string[], maxLength: number): fc.Arbitrary<string> =>
  fc
    .array(fc.tuple(fc.constantFrom(...PIECES), fc.constantFrom(...between)), { maxLength })
    .map((pairs) =>
      pairs
        .map(([piece, gap]) => piece + gap)
        .join('')
        .trim(),
    );

/** A waypoint as it may leave: text as it is kept, without markup. */
export const waypointArbitrary: fc.Arbitrary<Waypoint> = record<Waypoint>({
  name: orNull(pieces(['', ' '], 4)).map((name) => (name === '' ? null : name)),
  latitudeDeg: number(-90, 90),
  longitudeDeg: number(-180, 180),
  elevationM: orNull(number(-450, 9000)),
  note: pieces(['', ' ', '\n', '\n\n'], 6).map((note) =>
    note.replace(/ *\n */g, '\n').replace(/\n{3,}/g, '\n\n'),
  ),
  bearingDeg: orNull(angle),
  takenAtMs: orNull(fc.integer({ min: -2_208_988_800_000, max: 7_258_118_399_999 })),
});

export const waypointsArbitrary: fc.Arbitrary<readonly Waypoint[]> = fc.array(waypointArbitrary, {
  minLength: 1,
  maxLength: 5,
});
