import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MeasuredRow } from './largest-error.ts';
import { errorTable, withBlock } from './readme-table.ts';
import { runTool } from './run-command.ts';

const README = 'README.md';

/** Runs the tests that measure an error and writes what they found into the README's table. */
export const main = async (): Promise<void> => {
  const folder = mkdtempSync(join(tmpdir(), 'undersky-readme-'));
  const rowsFile = join(folder, 'rows');
  try {
    const exitCode = await runTool('vitest', ['run', '--project=unit', ...measuringTests()], {
      env: { ERROR_ROWS_FILE: rowsFile },
    });
    if (exitCode !== 0) throw new Error(`A test failed: ${README} is left as it was.`);
    const table = errorTable(readRows(rowsFile));
    writeFileSync(README, withBlock(readFileSync(README, 'utf8'), 'errors', table));
    console.log(table);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

const measuringTests = (): readonly string[] =>
  readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.test.ts'))
    .map((path) => join('tests', path))
    .filter((path) => readFileSync(path, 'utf8').includes('largestError('));

const readRows = (path: string): readonly MeasuredRow[] =>
  readFileSync(path, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line): MeasuredRow => JSON.parse(line));
