import { describe, expect, test } from 'vitest';
import {
  addCounts,
  countsFromExitCodes,
  countsFromPlaywright,
  countsFromVitest,
} from './test-counts.ts';

const ONE_FAILURE = { passed: 0, failed: 1, skipped: 0 };

const vitestReport = (
  ...files: readonly { readonly status: string; readonly tests: readonly string[] }[]
): string =>
  JSON.stringify({
    testResults: files.map(({ status, tests }) => ({
      status,
      assertionResults: tests.map((each) => ({ status: each })),
    })),
  });

const playwrightReport = (
  stats: Readonly<Record<string, number>>,
  errors: unknown[] = [],
): string =>
  JSON.stringify({ stats: { expected: 0, unexpected: 0, flaky: 0, skipped: 0, ...stats }, errors });

describe('commands known by their exit codes', () => {
  test('are one passed test when all of them succeed', () => {
    expect(countsFromExitCodes([0, 0])).toEqual({ passed: 1, failed: 0, skipped: 0 });
  });
  test.each([[[1, 0]], [[0, 2]]])('are one failed test for %j', (codes) => {
    expect(countsFromExitCodes(codes)).toEqual(ONE_FAILURE);
  });
});

describe('a Vitest report', () => {
  test('is added up over its files; whatever did not run is skipped', () => {
    const report = vitestReport(
      { status: 'passed', tests: ['passed', 'passed', 'pending', 'todo'] },
      { status: 'failed', tests: ['passed', 'failed', 'skipped'] },
    );
    expect(countsFromVitest(report, 1)).toEqual({ passed: 3, failed: 1, skipped: 3 });
  });
  test('each file that did not load is one failure, beside the failing tests of others', () => {
    const report = vitestReport(
      { status: 'failed', tests: ['passed', 'failed'] },
      { status: 'failed', tests: [] },
      { status: 'failed', tests: [] },
    );
    expect(countsFromVitest(report, 1)).toEqual({ passed: 1, failed: 3, skipped: 0 });
  });
  test('an error outside every test is one failure', () => {
    const report = vitestReport({ status: 'passed', tests: ['passed'] });
    expect(countsFromVitest(report, 1)).toEqual({ passed: 1, failed: 1, skipped: 0 });
  });
  test.each([[null], ['{"testResults'], ['{}'], [vitestReport()]])(
    'missing, cut short or empty (%j) is one failure, whatever the exit code',
    (report) => {
      expect(countsFromVitest(report, 0)).toEqual(ONE_FAILURE);
      expect(countsFromVitest(report, 1)).toEqual(ONE_FAILURE);
    },
  );
});

describe('a Playwright report', () => {
  test('gives its expected, unexpected and skipped journeys', () => {
    const report = playwrightReport({ expected: 5, unexpected: 2, skipped: 1 });
    expect(countsFromPlaywright(report, 1)).toEqual({ passed: 5, failed: 2, skipped: 1 });
  });
  test('a journey that passed only on a second try has failed', () => {
    const report = playwrightReport({ expected: 5, flaky: 1 });
    expect(countsFromPlaywright(report, 0)).toEqual({ passed: 5, failed: 1, skipped: 0 });
  });
  test('a file that did not load or a server that did not start is one failure', () => {
    const report = playwrightReport({ expected: 5 }, [{ message: 'no server' }]);
    expect(countsFromPlaywright(report, 1)).toEqual({ passed: 5, failed: 1, skipped: 0 });
  });
  test('missing is one failure', () => {
    expect(countsFromPlaywright(null, 0)).toEqual(ONE_FAILURE);
  });
});

test('counts are added column by column', () => {
  expect(
    addCounts([
      { passed: 1, failed: 20, skipped: 300 },
      { passed: 4, failed: 50, skipped: 600 },
    ]),
  ).toEqual({ passed: 5, failed: 70, skipped: 900 });
});
