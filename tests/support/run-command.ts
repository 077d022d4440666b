import { spawn } from 'node:child_process';

const TOOLS = {
  tsc: 'node_modules/typescript/bin/tsc',
  oxlint: 'node_modules/oxlint/bin/oxlint',
  oxfmt: 'node_modules/oxfmt/bin/oxfmt',
  vitest: 'node_modules/vitest/vitest.mjs',
  playwright: 'node_modules/@playwright/test/cli.js',
} as const;

export type Tool = keyof typeof TOOLS;

/** Runs an installed tool with its output passed on; resolves to its exit code, 1 when killed. */
export const runTool = (
  tool: Tool,
  args: readonly string[],
  options: { readonly env?: Readonly<Record<string, string>>; readonly quiet?: 'quiet' } = {},
): Promise<number> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [TOOLS[tool], ...args], {
      stdio: options.quiet === undefined ? 'inherit' : ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, ...options.env },
    });
    child.once('error', reject);
    child.once('exit', (code) => resolve(code ?? 1));
  });
