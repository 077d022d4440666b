import { afterAll } from 'vitest';

/** Collects differences from a reference and prints the largest when the file's tests are done. */
export const largestError = (quantity: string, unit: string): ((difference: number) => number) => {
  let largest = 0;
  let count = 0;
  afterAll(() => {
    console.log(`${quantity}: largest error ${largest.toPrecision(3)} ${unit} in ${count}`);
  });
  return (difference) => {
    const size = Math.abs(difference);
    largest = Math.max(largest, size);
    count += 1;
    return size;
  };
};
