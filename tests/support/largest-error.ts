import { appendFileSync } from 'node:fs';

import { afterAll } from 'vitest';

import type { ErrorQuantity } from './error-quantities.ts';

/** What a row of the README's table of errors says beside the error. */
type ReadmeRow = {
  readonly quantity: ErrorQuantity;
  readonly method: string;
  readonly comparedWith: string;
};

export type MeasuredRow = ReadmeRow & { readonly error: string; readonly count: number };

/** Where the rows go when the README's table is made; see readme-figures.ts. */
const ROWS_FILE = process.env['ERROR_ROWS_FILE'];

/**
 * Collects differences from a reference and prints the largest when the file's tests are done;
 * with a row, also for the README.
 */
export const largestError = (
  quantity: string,
  unit: string,
  row?: ReadmeRow,
): ((difference: number) => number) => {
  let largest = 0;
  let count = 0;
  afterAll(() => {
    const error = `${Number(largest.toPrecision(2))}${'°′'.includes(unit) ? '' : ' '}${unit}`;
    console.log(`${quantity}: largest error ${error} in ${count}`);
    if (row === undefined || ROWS_FILE === undefined) return;
    const measured: MeasuredRow = { ...row, error, count };
    appendFileSync(ROWS_FILE, `${JSON.stringify(measured)}\n`);
  });
  return (difference) => {
    const size = Math.abs(difference);
    largest = Math.max(largest, size);
    count += 1;
    return size;
  };
};
