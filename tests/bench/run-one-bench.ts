import { basename, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Bench } from './bench.ts';
import { figureTable } from './figure-table.ts';

const file = resolve(process.argv[2] ?? '');
const { benches }: { readonly benches?: readonly Bench[] } = await import(
  /* @vite-ignore */ pathToFileURL(file).href
);
if (benches === undefined) {
  throw new Error(`${basename(file)}: expected an exported list \`benches\`, found none.`);
}

for (const { name, run } of benches) {
  console.log(`\n${name}`);
  try {
    for (const line of figureTable(await run())) console.log(`  ${line}`);
  } catch (problem) {
    console.log(`  broke: ${problem instanceof Error ? problem.message : String(problem)}`);
    process.exitCode = 1;
  }
}
