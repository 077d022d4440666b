export type Counts = {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
};

const NONE: Counts = { passed: 0, failed: 0, skipped: 0 };

export const addCounts = (all: readonly Counts[]): Counts =>
  all.reduce(
    (sum, counts) => ({
      passed: sum.passed + counts.passed,
      failed: sum.failed + counts.failed,
      skipped: sum.skipped + counts.skipped,
    }),
    NONE,
  );

/** Commands that report nothing but their exit codes, such as types and lint, are one test. */
export const countsFromExitCodes = (exitCodes: readonly number[]): Counts =>
  exitCodes.every((code) => code === 0) ? { ...NONE, passed: 1 } : { ...NONE, failed: 1 };

type VitestReport = {
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
};

/**
 * A file that failed without a failing test of its own (it did not load, say) is one failure.
 * No report (null) is one failure too.
 */
export const countsFromVitest = (reportText: string | null, exitCode: number): Counts =>
  countsFromReport(reportText, exitCode, (text) => {
    const report: VitestReport = JSON.parse(text);
    return addCounts(
      report.testResults.map((file) => {
        const tests = addCounts(file.assertionResults.map(({ status }) => countOne(status)));
        return file.status === 'failed' && tests.failed === 0 ? { ...tests, failed: 1 } : tests;
      }),
    );
  });

type PlaywrightReport = {
  readonly stats: {
    readonly expected: number;
    readonly unexpected: number;
    readonly flaky: number;
    readonly skipped: number;
  };
  /** Failures outside any test: a file that does not load, a server that does not start. */
  readonly errors: readonly unknown[];
};

/** Retries are off; should a journey pass only on a second try, it has failed. */
export const countsFromPlaywright = (reportText: string | null, exitCode: number): Counts =>
  countsFromReport(reportText, exitCode, (text) => {
    const { stats, errors }: PlaywrightReport = JSON.parse(text);
    return {
      passed: stats.expected,
      failed: stats.unexpected + stats.flaky + errors.length,
      skipped: stats.skipped,
    };
  });

/** Text that cannot be read counts as no report; so does a run of no tests at all. */
const countsFromReport = (
  reportText: string | null,
  exitCode: number,
  read: (text: string) => Counts,
): Counts => {
  const counts = reportText === null ? NONE : readOrNone(reportText, read);
  const nothingSaid = counts.passed + counts.failed + counts.skipped === 0;
  return counts.failed === 0 && (exitCode !== 0 || nothingSaid) ? { ...counts, failed: 1 } : counts;
};

const readOrNone = (reportText: string, read: (text: string) => Counts): Counts => {
  try {
    return read(reportText);
  } catch {
    return NONE;
  }
};

const countOne = (status: string): Counts => {
  if (status === 'passed') return { ...NONE, passed: 1 };
  if (status === 'failed') return { ...NONE, failed: 1 };
  return { ...NONE, skipped: 1 };
};
