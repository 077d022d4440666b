import type { Browser, Page } from '@playwright/test';

export type LongestTask = {
  /** Of the page's main thread: what it took, however busy the machine is with other work. */
  readonly processorMs: number;
  /** The longest by the clock; on a machine with nothing else to do, the same. */
  readonly clockMs: number;
};

type TraceEvent = {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds, by the clock and of the thread. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
};

/** The longest task of the page while something is done to it, from the browser's own trace. */
export const longestTask = async (
  browser: Browser,
  page: Page,
  act: () => Promise<void>,
): Promise<LongestTask> => {
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline'] });
  await act();
  const trace: { readonly traceEvents: readonly TraceEvent[] } = JSON.parse(
    (await browser.stopTracing()).toString(),
  );
  const events = trace.traceEvents;
  const dispatch = events.find(({ name }) => name === 'EventDispatch');
  const tasks = events.filter(
    ({ name, ph, pid, tid }) =>
      name.endsWith('RunTask') && ph === 'X' && pid === dispatch?.pid && tid === dispatch.tid,
  );
  if (tasks.length === 0) throw new Error('The trace holds no task of the page.');
  return {
    processorMs: Math.max(...tasks.map(({ tdur = Number.NaN }) => tdur)) / 1000,
    clockMs: Math.max(...tasks.map(({ dur = Number.NaN }) => dur)) / 1000,
  };
};
