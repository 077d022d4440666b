import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { findBrowser, type BrowserProblem } from './browser.ts';
import { runTool } from './run-command.ts';
import {
  countsFromExitCodes,
  countsFromPlaywright,
  countsFromVitest,
  type Counts,
} from './test-counts.ts';
import { exitCodeFor, isCi, summaryLines, type Part } from './test-summary.ts';

const REPORTS = 'test-results/reports';
const JOURNEYS = ['test', '--config', 'tests/journeys/playwright.config.ts'];

const PARTS = ['types', 'lint', 'unit', 'browser', 'journeys'] as const;
type PartName = (typeof PARTS)[number];

/** Runs every part, whatever became of the one before; names as arguments choose among them. */
export const main = async (names: readonly string[]): Promise<void> => {
  const unknown = names.filter((name) => !PARTS.some((part) => part === name));
  if (unknown.length > 0) {
    throw new Error(`Expected parts out of ${PARTS.join(', ')}; found ${unknown.join(', ')}.`);
  }
  rmSync(REPORTS, { recursive: true, force: true });
  mkdirSync(REPORTS, { recursive: true });
  const browser = findBrowser();
  const problem = browser.ok ? null : browser.problem;
  if (browser.ok) {
    console.log(`Browser: ${browser.value.executablePath} (${browser.value.from})`);
  }
  const parts: Part[] = [];
  for (const name of PARTS) {
    if (names.length > 0 && !names.includes(name)) continue;
    console.log(`\n== ${name}`);
    const startMs = performance.now();
    const counts = await runPart(name, problem);
    parts.push({ name, counts, seconds: (performance.now() - startMs) / 1000 });
  }
  const browserMissing =
    problem?.kind === 'none' && parts.some(({ name }) => name === 'browser' || name === 'journeys');
  console.log(browserMissing ? `\n${problem.message}\n` : '');
  for (const line of summaryLines(parts)) console.log(line);
  process.exitCode = exitCodeFor({ parts, browserMissing, ci: isCi(process.env['CI']) });
};

const runPart = async (name: PartName, problem: BrowserProblem | null): Promise<Counts> => {
  switch (name) {
    case 'types':
      return countsFromExitCodes([
        await runTool('tsc', ['--noEmit']),
        await runTool('tsc', ['--noEmit', '-p', 'src/core']),
      ]);
    case 'lint':
      return countsFromExitCodes([
        await runTool('oxlint', ['--type-aware', '--deny-warnings']),
        await runTool('oxfmt', ['--check']),
      ]);
    case 'unit':
      return runVitest('unit');
    case 'browser':
      return problem === null ? runVitest('browser') : withoutBrowser(problem, listBrowserTests);
    case 'journeys':
      return problem === null ? runJourneys() : withoutBrowser(problem, listJourneys);
  }
};

const runVitest = async (project: 'unit' | 'browser'): Promise<Counts> => {
  const exitCode = await runTool('vitest', [
    'run',
    `--project=${project}`,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${REPORTS}/${project}.json`,
  ]);
  return countsFromVitest(reportText(`${project}.json`), exitCode);
};

const runJourneys = async (): Promise<Counts> => {
  const exitCode = await runTool('playwright', [...JOURNEYS, '--reporter', 'list,json'], {
    env: { PLAYWRIGHT_JSON_OUTPUT_FILE: `${REPORTS}/journeys.json` },
  });
  return countsFromPlaywright(reportText('journeys.json'), exitCode);
};

/** Each test counts as skipped where there is no browser; a wrong setting is a failure. */
const withoutBrowser = async (
  problem: BrowserProblem,
  list: () => Promise<Counts>,
): Promise<Counts> => {
  if (problem.kind === 'wrong-setting') {
    console.log(problem.message);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  return list();
};

const listBrowserTests = async (): Promise<Counts> => {
  const exitCode = await runTool('vitest', [
    'list',
    '--project=browser',
    '--static-parse',
    `--json=${REPORTS}/browser-list.json`,
  ]);
  return asSkipped(exitCode, 'browser-list.json', (text) => {
    const list: readonly unknown[] = JSON.parse(text);
    return list.length;
  });
};

const listJourneys = async (): Promise<Counts> => {
  const exitCode = await runTool('playwright', [...JOURNEYS, '--list', '--reporter', 'json'], {
    env: { PLAYWRIGHT_JSON_OUTPUT_FILE: `${REPORTS}/journeys-list.json` },
    quiet: 'quiet',
  });
  return asSkipped(exitCode, 'journeys-list.json', (text) => countSpecs(JSON.parse(text)));
};

type Suite = { readonly specs?: readonly unknown[]; readonly suites?: readonly Suite[] };

const countSpecs = ({ specs = [], suites = [] }: Suite): number =>
  suites.reduce((sum, suite) => sum + countSpecs(suite), specs.length);

const asSkipped = (exitCode: number, file: string, count: (text: string) => number): Counts => {
  const text = reportText(file);
  return exitCode !== 0 || text === null
    ? { passed: 0, failed: 1, skipped: 0 }
    : { passed: 0, failed: 0, skipped: count(text) };
};

const reportText = (file: string): string | null => {
  try {
    return readFileSync(`${REPORTS}/${file}`, 'utf8');
  } catch {
    return null;
  }
};
