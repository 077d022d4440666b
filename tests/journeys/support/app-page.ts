import { expect, test as base, type BrowserContext } from '@playwright/test';

type AppOptions = {
  /** What the page's clock shows, standing still, until a journey sets another time. */
  now: string;
  /** Origins, besides the app's own, that this journey switches on. */
  allowedOrigins: readonly string[];
  /** Console errors that this journey brings about. */
  expectedErrors: readonly RegExp[];
};

/**
 * A page of the built app under a fixed clock. The journey fails when any of its tabs writes an
 * error to the console, throws, or asks another origin for anything.
 */
export const test = base.extend<AppOptions>({
  now: ['2025-09-20T12:00:00+02:00', { option: true }],
  allowedOrigins: [[], { option: true }],
  expectedErrors: [[], { option: true }],
  baseURL: async ({}, use) => use(process.env['APP_URL']),
  page: async ({ page, context, now, allowedOrigins, expectedErrors, baseURL }, use) => {
    if (baseURL === undefined) throw new Error('Expected the address of the app in APP_URL.');
    const complaints = await watch(context, [new URL(baseURL).origin, ...allowedOrigins]);
    await page.clock.setFixedTime(new Date(now));
    await use(page);
    const unexpected = complaints.filter((one) => !expectedErrors.some((error) => error.test(one)));
    expect(unexpected, 'console errors and requests to other origins').toEqual([]);
  },
});

export { expect };

const watch = async (
  context: BrowserContext,
  allowedOrigins: readonly string[],
): Promise<readonly string[]> => {
  const complaints: string[] = [];
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`console: ${message.text()}`);
  });
  context.on('weberror', (problem) => complaints.push(`thrown: ${problem.error().message}`));
  await context.route(
    ({ protocol, origin }) => protocol.startsWith('http') && !allowedOrigins.includes(origin),
    (route) => {
      complaints.push(`request to ${route.request().url()}`);
      return route.abort();
    },
  );
  return complaints;
};
