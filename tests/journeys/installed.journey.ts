import type { Page } from '@playwright/test';

import { expect, test as base } from './support/app-page.ts';
import { figure } from './support/figure.ts';
import { serveInstalledApp, type InstalledApp } from './support/installed-app.ts';
import { coastArchive } from './support/coast-archive.ts';

const test = base.extend<{ app: InstalledApp }>({
  app: async ({}, use) => {
    const app = await serveInstalledApp();
    await use(app);
    await app.stop();
    await app.remove();
  },
  baseURL: async ({ app }, use) => use(app.url),
});

test.use({ serviceWorkers: 'allow' });

const said = (page: Page) => page.locator('output.said');

/** Opened for the first time, until the app says that all of it is on the device. */
const visitOnce = async (page: Page): Promise<void> => {
  await page.goto('./#/scout');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await expect(said(page)).toHaveText(/on this device now and opens without a network/);
};

test('after one visit the app starts cold with no server at all', async ({
  page,
  context,
  app,
}) => {
  await visitOnce(page);
  await page.locator('[data-field="bearing"]').fill('330');
  await page.locator('[data-field="bearing"]').press('Enter');
  await expect(figure(page, 'camera-faces')).toContainText('330° NNW');
  await app.stop();
  await page.close();

  const cold = await context.newPage();
  await cold.goto(`${app.url}#/scout`);
  await expect(cold.locator('[data-first-figures="drawn"]')).toBeVisible();
  await expect(figure(cold, 'camera-faces')).toContainText('330° NNW');
  await expect(cold.locator('.outline-tiles canvas').first()).toBeVisible();
  await expect(cold.getByText('could not be read')).toHaveCount(0);

  await test.step('the land is drawn, from close by in its finer outline', async () => {
    await expect.poll(() => inkOnMap(cold, '.outline-tiles')).toBeGreaterThan(1000);
  });

  await test.step('places are found, and a new spot has its zone', async () => {
    await cold.locator('[data-add-spot]').click();
    await cold.locator('[data-field="place-search"]').fill('Ushuaia');
    await cold.locator('[data-found-place="Ushuaia"]').first().click();
    await expect(figure(cold, 'zone')).toContainText('Argentina');
  });

  await test.step('the other screens open', async () => {
    for (const [path, sign] of [
      ['day', '[data-column]'],
      ['setup', '[data-field="setup"]'],
      ['kit', '[data-figure="meter-reflector"]'],
      ['call-sheet', '[data-sheet-setup]'],
    ] as const) {
      await cold.evaluate((hash) => {
        window.location.hash = hash;
      }, `#/${path}`);
      await expect(cold.locator(sign).first()).toBeVisible();
    }
  });
});

test('a map from a file is kept on this device and drawn with no server at all', async ({
  page,
  context,
  app,
}) => {
  await visitOnce(page);
  await page.locator('[data-open="map"]').click();
  const file = page.locator('[data-field="local-map-file"]');

  await test.step('what is no map archive is refused in a sentence and not kept', async () => {
    await file.setInputFiles({
      name: 'sorry.pmtiles',
      mimeType: 'application/octet-stream',
      buffer: Buffer.from(`<!DOCTYPE html>${' '.repeat(400)}`),
    });
    await expect(figure(page, 'local-map')).toHaveText(
      'sorry.pmtiles: found a file that begins ‘<!DOCTY’, expected a map archive, ‘PMTiles’',
    );
    await expect(page.locator('[data-map-file]')).toHaveCount(0);
  });

  await test.step('an archive is kept, listed with size and bounds, and drawn', async () => {
    await file.setInputFiles({
      name: 'coast.pmtiles',
      mimeType: 'application/octet-stream',
      buffer: await coastArchive(),
    });
    const row = page.locator('[data-map-file="coast.pmtiles"]');
    await expect(row).toContainText('45.00 to 46.50° N, 13.00 to 14.50° E');
    await expect(row).toContainText('all spots of this shoot lie in it');
    await expect(row).toContainText(/\d kB/);
    await expect(row.locator('[data-field="local-map-shown"]')).toBeChecked();
    await expect.poll(() => inkOnMap(page, '.local-tiles')).toBeGreaterThan(10_000);
    await expect(page.locator('.map-credits')).toContainText('Harbour office');
  });

  await app.stop();
  await page.close();
  const cold = await context.newPage();
  await cold.goto(`${app.url}#/scout`);
  await expect(cold.locator('[data-first-figures="drawn"]')).toBeVisible();
  await expect.poll(() => inkOnMap(cold, '.local-tiles')).toBeGreaterThan(10_000);

  await test.step('taken away, it is gone from map and device', async () => {
    await cold.locator('[data-open="map"]').click();
    await cold.locator('[data-remove-map]').click();
    await expect(cold.locator('[data-map-file]')).toHaveCount(0);
    await expect(cold.locator('.local-tiles')).toHaveCount(0);
    await cold.reload();
    await expect(cold.locator('[data-first-figures="drawn"]')).toBeVisible();
    await expect(cold.locator('.local-tiles')).toHaveCount(0);
  });
});

test('a new version is announced, waits until it is asked for, and loses nothing', async ({
  page,
  context,
  app,
}) => {
  await visitOnce(page);
  await app.renew();
  const offer = page.locator('[aria-label="New version"]');

  await test.step('the page in use stays as it is', async () => {
    await page.reload();
    await expect(offer).toContainText('A new version is ready');
    await expect(page).toHaveTitle('Undersky');
  });

  await test.step('put off, it is offered again at the next start', async () => {
    await page.locator('[data-version-later]').click();
    await expect(offer).toHaveCount(0);
    await page.reload();
    await expect(page).toHaveTitle('Undersky');
    await expect(offer).toContainText('A new version is ready');
  });

  const other = await context.newPage();
  await other.goto('./#/setup');
  await expect(other.locator('[data-take-version]')).toBeVisible();
  await expect(other).toHaveTitle('Undersky');

  await test.step('taken, it opens, with what was typed the moment before', async () => {
    await page.bringToFront();
    await page.locator('[data-field="bearing"]').fill('123');
    await page.locator('[data-take-version]').click();
    await expect(page).toHaveTitle('Undersky, newer');
    await expect(figure(page, 'camera-faces')).toContainText('123°');
    await expect(offer).toHaveCount(0);
  });

  await test.step('another tab is told and not changed under the hand', async () => {
    await expect(other.locator('[aria-label="New version"]')).toContainText('Another tab');
    await expect(other).toHaveTitle('Undersky');
    await other.locator('[data-take-version]').click();
    await expect(other).toHaveTitle('Undersky, newer');
  });
});

test('the page names an app to install, with its marks', async ({ page, app }) => {
  await page.goto('./');
  const address = await page.locator('link[rel="manifest"]').getAttribute('href');
  const manifest = await page.request.get(new URL(address ?? '', app.url).href);
  const { name, start_url, display, icons } = await manifest.json();
  expect({ name, start_url, display }).toEqual({
    name: 'Undersky',
    start_url: './',
    display: 'standalone',
  });
  for (const { src } of icons) {
    const mark = await page.request.get(new URL(src, app.url).href);
    expect(mark.headers()['content-type'], src).toMatch(/^image\//);
  }
  const session = await page.context().newCDPSession(page);
  const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
  expect(
    installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito'),
  ).toEqual([]);
});

/** Pixels of a layer's tiles that are painted. */
const inkOnMap = (page: Page, layer: string): Promise<number> =>
  page.evaluate((name) => {
    let painted = 0;
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>(`${name} canvas`)) {
      const { width, height } = canvas;
      if (width === 0) continue;
      const pixels = canvas.getContext('2d')?.getImageData(0, 0, width, height).data ?? [];
      for (let at = 3; at < pixels.length; at += 4) painted += pixels[at] === 255 ? 1 : 0;
    }
    return painted;
  }, layer);
