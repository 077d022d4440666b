// Runs a TypeScript file's exported main() in plain Node: node tests/support/run-ts.mjs FILE [arguments]
import { resolve } from 'node:path';
import { runnerImport } from 'vite';

const [file, ...args] = process.argv.slice(2);
const callers = process.env.NODE_ENV;
const { module } = await runnerImport(resolve(file), { configFile: false });
// The import sets NODE_ENV, which would reach every command that main starts.
if (callers === undefined) delete process.env.NODE_ENV;
await module.main(args);
