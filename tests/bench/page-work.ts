import type { CDPSession, JSHandle, Page } from '@playwright/test';

const COUNTERS = ['ScriptDuration', 'RecalcStyleDuration', 'LayoutDuration'];

/** Script, style and layout of the page since it began, by the browser's own counters. */
export const workMs = async (session: CDPSession): Promise<number> => {
  const { metrics } = await session.send('Performance.getMetrics');
  const seconds = COUNTERS.map((name) => {
    const metric = metrics.find((each) => each.name === name);
    if (metric === undefined) throw new Error(`The browser does not count ${name}.`);
    return metric.value;
  });
  return seconds.reduce((sum, each) => sum + each, 0) * 1000;
};

/** Lengths in milliseconds of the tasks of over 50 ms from now on. */
export const watchLongTasks = (page: Page): Promise<JSHandle<number[]>> =>
  page.evaluateHandle(() => {
    const durations: number[] = [];
    new PerformanceObserver((list) => {
      durations.push(...list.getEntries().map(({ duration }) => duration));
    }).observe({ type: 'longtask' });
    return durations;
  });

/** Two frames on, whatever the last event asked for has been drawn. */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
      }),
  );
