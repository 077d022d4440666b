import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import packageJson from './package.json' with { type: 'json' };
import { buildAtlasFiles } from './src/atlas/build-atlas-files.ts';
import { findBrowser } from './tests/support/browser.ts';
import { launchOptions } from './tests/support/launch.ts';

const browser = findBrowser();

/** Named in full, or Vite meets one in mid-run and may reload the page under a test. */
const browserDependencies = [
  ...Object.keys(packageJson.dependencies).filter(
    (name) => !['zod', '@fontsource-variable/archivo'].includes(name),
  ),
  'zod/mini',
  'react-dom/client',
  'react/jsx-dev-runtime',
  'vitest-browser-react',
];

export default defineConfig({
  base: './',
  plugins: [react(), buildAtlasFiles()],
  build: {
    target: 'es2023',
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 600,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  worker: { format: 'es' },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/**/*.browser.test.ts'],
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        optimizeDeps: { include: browserDependencies },
        test: {
          name: 'browser',
          include: ['tests/**/*.browser.test.{ts,tsx}'],
          testTimeout: 30_000,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright(browser.ok ? { launchOptions: launchOptions(browser.value) } : {}),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
