import { defineConfig } from '@playwright/test';
import { findBrowser } from '../support/browser.ts';
import { launchOptions } from '../support/launch.ts';

const browser = findBrowser();

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.journey.ts',
  outputDir: '../../test-results/journeys',
  globalSetup: './support/serve.ts',
  forbidOnly: process.env['CI'] !== undefined,
  fullyParallel: true,
  retries: 0,
  workers: 2,
  timeout: 60_000,
  expect: { timeout: 15_000 },
  use: {
    ...(browser.ok ? { launchOptions: launchOptions(browser.value) } : {}),
    viewport: { width: 1440, height: 900 },
    contextOptions: { reducedMotion: 'reduce' },
    // Each journey meets the build as it is served; the one that installs the app switches them on.
    serviceWorkers: 'block',
    timezoneId: 'Europe/Rome',
    locale: 'en-GB',
    colorScheme: 'light',
    trace: 'retain-on-failure',
  },
});
