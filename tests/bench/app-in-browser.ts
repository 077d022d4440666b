import type { Browser, BrowserContext, Page } from '@playwright/test';
import { launchBrowser } from '../support/launch.ts';
import { buildApp, serveApp } from '../support/serve-app.ts';

export type AppInBrowser = {
  readonly browser: Browser;
  readonly context: BrowserContext;
  readonly page: Page;
  /** Ends in a slash; nothing of it is loaded yet. */
  readonly url: string;
};

/** Builds and serves the app and hands over a fresh browser with an empty cache. */
export const withAppInBrowser = async <Answer>(
  measure: (app: AppInBrowser) => Promise<Answer>,
): Promise<Answer> => {
  await buildApp();
  const { url, close } = await serveApp();
  const browser = await launchBrowser();
  try {
    console.log(`  in Chromium ${browser.version()}`);
    const context = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      timezoneId: 'Europe/Rome',
      locale: 'en-GB',
      // What the app keeps for later would be fetched beside what is measured.
      serviceWorkers: 'block',
    });
    return await measure({ browser, context, page: await context.newPage(), url });
  } finally {
    await browser.close();
    await close();
  }
};
