import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  markupFromText,
  plainName,
  plainNote,
  textFromMarkup,
} from '../../../src/exchange/waypoints/plain-text.ts';

describe('hypertext comes in as the text it says', () => {
  test.each([
    ['<b>Pier</b> head', 'Pier head'],
    ['Gate<br>six<br/>seven', 'Gate\nsix\nseven'],
    ['<p>one</p>\n<p>two</p>', 'one\n\ntwo'],
    ['a &lt;sic&gt; &amp; c &#176; &#xB0; &deg;', 'a <sic> & c ° ° °'],
    ['<script>alert("x")</script>after', 'after'],
    ['<style>p { color: red }</style>after', 'after'],
    ['<img src=x onerror=alert(1)>', ''],
    ['<a href="javascript:alert(1)">Map</a>', 'Map'],
    ['before<!-- hidden -->after', 'beforeafter'],
    ['5 < 6 and 7 > 4', '5 < 6 and 7 > 4'],
    ['never closed <script>alert(1)', 'never closed'],
    ['&#99999999; &unknown;', '&#99999999; &unknown;'],
  ])('%s', (markup, text) => {
    expect(plainNote(textFromMarkup(markup))).toBe(text);
  });

  test('also where plain text was called for, but text without tags stays as it is', () => {
    expect(plainNote('<div>Gate</div>')).toBe('Gate');
    expect(plainNote('R&D &amp; 5 <6')).toBe('R&D &amp; 5 <6');
    expect(plainName('<i>Pier</i>\n head')).toBe('Pier head');
  });

  test('twenty thousand unclosed scripts and comments are no trouble', () => {
    expect(textFromMarkup('<script '.repeat(20_000))).toBe('');
    expect(textFromMarkup('<!-- '.repeat(20_000))).toBe('');
    expect(textFromMarkup('<'.repeat(40_000)).length).toBe(40_000);
  });
});

test('plain text written for a field of hypertext is read back the same', () => {
  const piece = fc.constantFrom(
    '<b',
    '>',
    '&amp;',
    '&',
    '<',
    '/',
    'x',
    ' ',
    '#39;',
    'lt;',
    '!--',
    '?',
  );
  fc.assert(
    fc.property(
      fc.array(piece).map((pieces) => pieces.join('')),
      (text) => {
        expect(textFromMarkup(markupFromText(text))).toBe(text);
      },
    ),
  );
});

test('controls, half characters and marks that turn the reading direction are dropped', () => {
  expect(plainName('Pi\u0000er\u202E \ud83d head\u0007')).toBe('Pier head');
  expect(plainNote('one\r\ntwo\u2028three')).toBe('one\ntwo\nthree');
});

test('a name is cut at 120 characters, a note at 4,000, with an ellipsis and no half character', () => {
  expect(plainName('x'.repeat(121))).toBe(`${'x'.repeat(119)}…`);
  expect(plainName(`${'x'.repeat(118)}🌅🌅`)).toBe(`${'x'.repeat(118)}…`);
  expect(plainNote('y'.repeat(5000)).length).toBe(4000);
  expect(plainName('  ')).toBeNull();
});
