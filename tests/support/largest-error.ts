import { appendFileSync } from 'node:fs';

import { afterAll } from 'vitest';

/** A row of the README's table of errors. */
export type ReadmeRow = {
  readonly quantity: string;
  readonly method: string;
  readonly comparedWith: string;
};

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
    const error = `${largest.toPrecision(2)} ${unit}`;
    console.log(`${quantity}: largest error ${error} in ${count}`);
    if (row !== undefined && ROWS_FILE !== undefined)
      appendFileSync(ROWS_FILE, `${JSON.stringify({ ...row, error, count })}\n`);
  });
  return (difference) => {
    const size = Math.abs(difference);
    largest = Math.max(largest, size);
    count += 1;
    return size;
  };
};
