import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { VitePWA } from 'vite-plugin-pwa';
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
  '@tmcw/togeojson',
  'fast-check',
  'zod/mini',
  'react-dom/client',
  'react/jsx-dev-runtime',
  'vitest-browser-react',
];

/** Every file of the build is kept at the first visit; the app itself registers the worker. */
const keptForOffline = VitePWA({
  injectRegister: false,
  registerType: 'prompt',
  includeManifestIcons: false,
  manifest: {
    name: 'Undersky',
    short_name: 'Undersky',
    description: packageJson.description,
    start_url: './',
    scope: './',
    display: 'standalone',
    lang: 'en',
    theme_color: '#292929',
    background_color: '#dddddd',
    icons: [
      { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
      { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
      {
        src: 'icon-maskable-512.png',
        sizes: '512x512',
        type: 'image/png',
        purpose: 'maskable',
      },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{html,js,css,woff2,json,tsv,svg,png}'],
    maximumFileSizeToCacheInBytes: 16 * 2 ** 20,
    navigateFallback: 'index.html',
    cleanupOutdatedCaches: true,
    clientsClaim: true,
    skipWaiting: false,
    inlineWorkboxRuntime: true,
    sourcemap: false,
  },
});

/** Small modules that every first screen needs: one file of them packs better than forty. */
const NEEDED_FIRST =
  /src\/(core\/units\/(angle|stops|result|direction)|core\/place\/(format-coordinates|metres-per-degree|geo-point)|core\/daylight\/sky-condition|core\/plan\/(fields|setup-schema|spot-schema|obstacle-schema|shoot|kit|check-document|shoot-upgrades|setup-defaults|spot-defaults|edits|order-key|references|verdicts|undo-order|same-value|new-spot)|storage\/(open-stored|stored-document|content-hash)|app\/state\/(view|services|saved-setting|lazy-part|documents|use-grounded|hold-days|atlas)|app\/ui\/(figure-text|SelectField|NumberField|TextField|Switch|Folded|verdict-text|condition-names|read-number))\.tsx?$/;

export default defineConfig({
  base: './',
  plugins: [react(), buildAtlasFiles(), keptForOffline],
  build: {
    target: 'es2023',
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 600,
    rolldownOptions: {
      checks: { pluginTimings: false },
      output: { codeSplitting: { groups: [{ name: 'first', test: NEEDED_FIRST }] } },
    },
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
