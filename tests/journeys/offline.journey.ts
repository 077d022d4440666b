import { expect, test as base } from './support/app-page.ts';
import { figure } from './support/figure.ts';
import { startTileServer, type TileServer } from './support/tile-server.ts';

const test = base.extend<{ tileServer: TileServer }>({
  tileServer: async ({}, use) => {
    const server = await startTileServer();
    await use(server);
    await server.close();
  },
  allowedOrigins: async ({ tileServer }, use) => use([tileServer.origin]),
});

test.use({ expectedErrors: [[/status of 503/], { scope: 'test' }] });

test.describe('in the visit that installed the app', () => {
  test.use({ serviceWorkers: 'allow' });

  test('without a network the five screens work', async ({ page, context }) => {
    const fetched: string[] = [];
    page.on('requestfinished', (request) =>
      fetched.push(/assets\/(\w+)-[\w-]+\.js/.exec(request.url())?.[1] ?? ''),
    );
    await page.goto('./#/scout');
    await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
    await expect
      .poll(() => fetched, { message: 'the other screens are fetched once the first stands' })
      .toEqual(
        expect.arrayContaining([
          'DayScreen',
          'SetupScreen',
          'KitScreen',
          'CallSheetScreen',
          'ShootSheet',
        ]),
      );
    await expect(page.locator('output.said')).toContainText('on this device now');
    await context.setOffline(true);

    await page.locator('[data-field="bearing"]').fill('330');
    await page.locator('[data-field="bearing"]').press('Enter');
    await expect(figure(page, 'camera-faces')).toContainText('330° NNW');

    await page.getByRole('link', { name: 'Day', exact: true }).first().click();
    await expect(page.locator('[data-column]')).toHaveCount(4);
    await expect(figure(page, 'day-patch-ev')).toContainText('EV');

    await page.getByRole('link', { name: 'Setup', exact: true }).first().click();
    await page.locator('[data-field="setup"]').selectOption('quartet');
    await expect(figure(page, 'where-and-when')).toContainText('faces 330°');
    await page.locator('[data-field="bearing"]').fill('300');
    await page.locator('[data-field="bearing"]').press('Enter');
    await expect(figure(page, 'where-and-when')).toContainText('faces 300°');

    await page.getByRole('link', { name: 'Kit', exact: true }).first().click();
    await expect(figure(page, 'meter-reflector')).toContainText('f/32');

    await page.getByRole('link', { name: 'Call sheet', exact: true }).first().click();
    await expect(page.locator('[data-sheet-setup]')).toHaveCount(4);
    await expect(figure(page, 'light-times')).toContainText('sunset 20:27');
  });
});

test('map tiles come only once they are switched on, with their credit, and may fail', async ({
  page,
  tileServer,
}) => {
  await page.goto('./#/scout');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  const outline = page.locator('.leaflet-container canvas');
  const tiles = page.locator('img.leaflet-tile-loaded');
  const credits = page.locator('.map-credits');
  await expect(outline.first()).toBeVisible();
  const outlineTiles = await outline.count();

  await test.step('an address alone asks nobody', async () => {
    await page.locator('[data-open="map"]').click();
    await expect(page.locator('[data-field="map-tiles"]')).toBeDisabled();
    await page.locator('[data-field="tile-address"]').fill(`${tileServer.origin}/{z}/{x}/{y}.png`);
    await page.locator('[data-field="tile-address"]').press('Enter');
    await page.locator('[data-field="tile-attribution"]').fill('Tiles of the harbour office');
    await page.locator('[data-field="tile-attribution"]').press('Enter');
    await expect(page.locator('[data-field="map-tiles"]')).toBeEnabled();
    await expect(figure(page, 'tiles-privacy')).toContainText(new URL(tileServer.origin).host);
    await page.reload();
    await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
    await page.waitForLoadState('networkidle');
    await expect(tiles).toHaveCount(0);
    expect(tileServer.asked).toEqual([]);
    await expect(credits).toContainText('Natural Earth');
    await expect(credits).not.toContainText('harbour office');
  });

  await test.step('switched on, the server is asked for tiles and credited', async () => {
    await page.locator('[data-open="map"]').click();
    await page.locator('[data-field="map-tiles"]').click();
    await expect(tiles.first()).toBeVisible();
    expect(tileServer.asked.length).toBeGreaterThan(0);
    for (const path of tileServer.asked) expect(path).toMatch(/^\/\d+\/\d+\/\d+\.png$/);
    await expect(credits).toContainText('Tiles of the harbour office');
    await expect(credits).toContainText('Natural Earth');
  });

  await test.step('a page sent in place of tiles leaves the outline, and a line that says so', async () => {
    tileServer.saySorry();
    await page.reload();
    await expect(page.locator('.tiles-note')).toHaveText('map tiles did not answer');
    await expect(tiles).toHaveCount(0);
    await expect(outline).toHaveCount(outlineTiles);
    await expect(page.getByText('Over the limit')).toHaveCount(0);
  });

  await test.step('a server that fails leaves the outline, and a line that says so', async () => {
    tileServer.fail();
    await page.reload();
    await expect(page.locator('.tiles-note')).toHaveText('map tiles did not answer');
    await expect(tiles).toHaveCount(0);
    await expect(outline).toHaveCount(outlineTiles);
    await expect(figure(page, 'spot-name')).toHaveText('Pier head');
  });

  await test.step('switched off, nobody is asked again', async () => {
    await page.locator('[data-open="map"]').click();
    await page.locator('[data-field="map-tiles"]').click();
    await expect(page.locator('.tiles-note')).toHaveCount(0);
    const before = tileServer.asked.length;
    await page.reload();
    await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
    await page.waitForLoadState('networkidle');
    expect(tileServer.asked.length).toBe(before);
    await expect(credits).not.toContainText('harbour office');
  });
});
