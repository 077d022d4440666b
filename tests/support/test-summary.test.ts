import { describe, expect, test } from 'vitest';
import { exitCodeFor, isCi, summaryLines, type Part } from './test-summary.ts';

const part = (name: string, passed: number, failed: number, skipped: number): Part => ({
  name,
  counts: { passed, failed, skipped },
  seconds: 1.25,
});

describe('the summary', () => {
  const lines = summaryLines([part('types', 1, 0, 0), part('unit', 40, 2, 3)]);
  test('says each part in a line', () => {
    expect(lines.slice(0, -1)).toEqual([
      'types     1 passed, 0 failed, 0 skipped  (1.3 s)',
      'unit      40 passed, 2 failed, 3 skipped  (1.3 s)',
    ]);
  });
  test('ends with the sum alone', () => {
    expect(lines.at(-1)).toBe('41 passed, 2 failed, 3 skipped');
  });
});

describe('the exit code', () => {
  const passing = [part('unit', 4, 0, 0)];
  const failing = [part('types', 0, 1, 0), part('unit', 4, 0, 0)];
  const skipping = [part('unit', 4, 0, 0), part('journeys', 0, 0, 7)];
  test.each([
    { what: 'all passed', parts: passing, browserMissing: false, ci: true, code: 0 },
    { what: 'a failure', parts: failing, browserMissing: false, ci: false, code: 1 },
    {
      what: 'no browser on an own machine',
      parts: skipping,
      browserMissing: true,
      ci: false,
      code: 0,
    },
    { what: 'no browser in CI', parts: skipping, browserMissing: true, ci: true, code: 1 },
    { what: 'no browser and a failure', parts: failing, browserMissing: true, ci: false, code: 1 },
    {
      what: 'journeys skipped on purpose in CI',
      parts: skipping,
      browserMissing: false,
      ci: true,
      code: 0,
    },
  ])('$what gives $code', ({ code, ...run }) => {
    expect(exitCodeFor(run)).toBe(code);
  });
});

test.each([
  ['true', true],
  ['1', true],
  ['false', false],
  ['0', false],
  ['', false],
  [undefined, false],
])('CI=%s is CI: %s', (setting, expected) => {
  expect(isCi(setting)).toBe(expected);
});
