import { expect, test } from 'vitest';

import { lengthM } from '../../../src/exchange/outlines/length-text.ts';

// Forms that the open map database's documentation of heights gives, and those that files show.
test.each([
  ['12', 12],
  [12, 12],
  ['12 m', 12],
  ['12m', 12],
  ['12,5', 12.5],
  ['12.5 m', 12.5],
  ["40'", 12.192],
  ['40 ft', 12.192],
  ['40′', 12.192],
  [`7'4"`, 2.2352],
  ['7′4″', 2.2352],
  [`6'0"`, 1.8288],
])('%s is %d m', (written, metres) => {
  expect(lengthM(written)).toBeCloseTo(metres, 9);
});

test.each([
  '',
  'high',
  '12-14',
  '12;14',
  '-3',
  '1e5',
  '12 km',
  'NaN',
  null,
  undefined,
  [12],
  Number.NaN,
])('%s is no length', (written) => {
  expect(lengthM(written)).toBeNull();
});
