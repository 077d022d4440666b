import type { SetupColumnInput } from '../../src/core/plan/setup-column.ts';
import { computeClient } from '../../src/worker/client.ts';

export type ColumnsTimed = {
  /** From the first request to the last answer. */
  readonly tookMs: number;
  readonly steps: readonly number[];
  /** Steps with sky in the frame, and those of them with a reach. */
  readonly withSky: number;
  readonly withReach: number;
};

declare global {
  // oxlint-disable-next-line typescript/consistent-type-definitions -- only an interface merges with the browser's own
  interface Window {
    timeColumns: (inputs: readonly SetupColumnInput[]) => Promise<ColumnsTimed>;
  }
}

const client = computeClient(
  new Worker(new URL('../../src/worker/compute.worker.ts', import.meta.url), { type: 'module' }),
);

/** Asks for all columns at once, as a screen does, and waits for the last. */
window.timeColumns = async (inputs) => {
  const startMs = performance.now();
  const answers = await Promise.all(
    inputs.map((input, at) => client.request(`column ${at}`, { kind: 'setup-column', input })),
  );
  const tookMs = performance.now() - startMs;
  const columns = answers.filter((answer) => answer !== null);
  const count = (figures: 'skyShare' | 'reachEv', counts: (value: number) => boolean): number =>
    columns.reduce((sum, column) => sum + column[figures].filter(counts).length, 0);
  return {
    tookMs,
    steps: columns.map(({ instantMs }) => instantMs.length),
    withSky: count('skyShare', (share) => share > 0),
    withReach: count('reachEv', Number.isFinite),
  };
};
