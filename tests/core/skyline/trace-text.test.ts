import { describe, expect, test } from 'vitest';

import { readTraceText } from '../../../src/core/skyline/trace-text.ts';

const pairs = (text: string): unknown => {
  const read = readTraceText(text);
  return read.ok
    ? read.value.map(({ azimuthDeg, altitudeDeg }) => [azimuthDeg, altitudeDeg])
    : read.problem;
};

describe('pairs of azimuth and altitude as people write them', () => {
  test.each([
    [
      '212.5 4.3\n230 6',
      [
        [212.5, 4.3],
        [230, 6],
      ],
    ],
    [
      '212.5,4.3\r\n230,6',
      [
        [212.5, 4.3],
        [230, 6],
      ],
    ],
    [
      '212,5;4,3\n230;6',
      [
        [212.5, 4.3],
        [230, 6],
      ],
    ],
    ['212,5\t4,3', [[212.5, 4.3]]],
    ['212,5  4,3', [[212.5, 4.3]]],
    ['212.5° −1.5°', [[212.5, -1.5]]],
    ['azimuth,altitude\n10, 2', [[10, 2]]],
    ['# from the jetty\n\n10 2 # the crane\n', [[10, 2]]],
    ['-10 2', [[350, 2]]],
    ['360 2', [[0, 2]]],
  ])('%j', (text, expected) => expect(pairs(text)).toEqual(expected));
});

describe('a faulty line is named, and nothing of the text is taken', () => {
  test('every one of them, by its line', () => {
    expect(readTraceText('10 2\nten two\n20 95\n400 1\n30 3 7')).toEqual({
      ok: false,
      problem: [
        {
          line: 2,
          sentence: 'found ‘ten two’, expected an azimuth and an altitude in degrees, as 212.5 4.3',
        },
        { line: 3, sentence: 'found ‘20 95’, expected an altitude from −10 to 89' },
        { line: 4, sentence: 'found ‘400 1’, expected an azimuth from −360 to 360' },
        {
          line: 5,
          sentence: 'found ‘30 3 7’, expected an azimuth and an altitude in degrees, as 212.5 4.3',
        },
      ],
    });
  });

  test('a text without a pair, and one of too many lines', () => {
    expect(pairs('')).toEqual([
      { line: 1, sentence: 'found no pair, expected an azimuth and an altitude' },
    ]);
    expect(pairs('1 1\n'.repeat(5000))).toEqual([
      { line: 3601, sentence: 'found 5001 lines, expected at most 3600' },
    ]);
  });

  test('many faulty lines are counted, not all listed', () => {
    const read = readTraceText('1 1\n' + 'x\n'.repeat(50));
    expect(read.ok ? 0 : read.problem.length).toBe(9);
    expect(read.ok ? '' : read.problem.at(-1)?.sentence).toBe('and 42 more lines are faulty');
  });

  test('NaN, infinity, markup and a number of a hundred digits are no angles', () => {
    for (const line of ['NaN NaN', 'Infinity 2', '<b>1</b> 2', '1e9 2', `${'9'.repeat(100)} 2`])
      expect(readTraceText(`1 1\n${line}`).ok, line).toBe(false);
  });
});
