import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { build } from 'vite';

const FOLDER = 'tests/bench';
const BUILT = 'node_modules/.cache/undersky-bench';
const RUNNER = 'run-one-bench.ts';

/**
 * Runs every *.bench.ts, or those whose names hold one of the arguments, each built as plain
 * JavaScript in a process of its own, so that the figures are the engine's and do not depend on
 * the bench before. A missed target is only said; a bench that breaks makes the command fail.
 */
export const main = async (words: readonly string[]): Promise<void> => {
  const files = readdirSync(FOLDER)
    .filter((file) => file.endsWith('.bench.ts'))
    .filter((file) => words.length === 0 || words.some((word) => file.includes(word)));
  if (files.length === 0) {
    throw new Error(`No bench in ${FOLDER} is named like ${words.join(' or ')}.`);
  }
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: {
      ssr: true,
      target: 'es2023',
      outDir: BUILT,
      emptyOutDir: true,
      rolldownOptions: {
        input: Object.fromEntries(
          [RUNNER, ...files].map((file) => [basename(file, '.ts'), resolve(FOLDER, file)]),
        ),
        output: { entryFileNames: '[name].mjs' },
      },
    },
  });
  for (const file of files) {
    const paths = [RUNNER, file].map((each) => join(BUILT, `${basename(each, '.ts')}.mjs`));
    const { status } = spawnSync(process.execPath, paths, { stdio: 'inherit' });
    if (status !== 0) process.exitCode = 1;
  }
};
