import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import type { Page } from '@playwright/test';

import { expect, test as base } from './support/app-page.ts';
import { openAll, turnControl } from './support/control.ts';
import { GROUND_CONTROLS, GROUND_OTHERS } from './support/controls-of-ground.data.ts';
import { figure, figureNumber, figureText } from './support/figure.ts';
import { startFootprintServer, type FootprintServer } from './support/footprint-server.ts';
import { openGround, pixelAt, shadowAt, spotPixel } from './support/ground-map.ts';

const test = base.extend<{ footprints: FootprintServer }>({
  footprints: async ({}, use) => {
    const server = await startFootprintServer();
    await use(server);
    await server.close();
  },
  allowedOrigins: async ({ footprints }, use) => use([footprints.origin]),
});

const PIER = { latitudeDeg: 45.6503, longitudeDeg: 13.7621 };
const RAD = Math.PI / 180;
/** Of the ellipsoid at the pier. */
const EAST_M = 77_943;
const NORTH_M = 111_143;

const field = (page: Page, name: string) => page.locator(`[data-field="${name}"]`).first();
const undo = (page: Page) => page.locator('[data-undo]').click();

const write = async (page: Page, name: string, text: string): Promise<void> => {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
};

/** The sun by another library. */
const sunAt = (clock: string): { readonly altitude: number; readonly azimuth: number } => {
  const at = new Date(`2027-05-14T${clock}:00+02:00`);
  const observer = new Observer(PIER.latitudeDeg, PIER.longitudeDeg, 0);
  const { ra, dec } = Equator(Body.Sun, at, observer, true, true);
  return Horizon(at, observer, ra, dec, 'normal');
};

const setMinute = async (page: Page, clock: string): Promise<void> => {
  const wanted = figureNumber(clock);
  for (let press = 0; press < 60; press += 1) {
    const now = figureNumber((await field(page, 'minute').getAttribute('aria-valuetext')) ?? '');
    if (now === wanted) return;
    const by = Math.abs(wanted - now);
    const [far, near] = wanted < now ? ['PageUp', 'ArrowUp'] : ['PageDown', 'ArrowDown'];
    await field(page, 'minute').press(by >= 60 ? far : near);
    await expect(field(page, 'minute')).not.toHaveAttribute('aria-valuetext', clockText(now));
  }
};

const clockText = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** A wall with corners typed in, so many metres from the pier head. */
const typeWall = async (
  page: Page,
  corners: readonly (readonly [eastM: number, northM: number])[],
): Promise<void> => {
  await page.locator('[data-draw="wall"]').click();
  for (const [eastM, northM] of corners)
    await write(
      page,
      'new-corner',
      `${(PIER.latitudeDeg + northM / NORTH_M).toFixed(7)}, ${(PIER.longitudeDeg + eastM / EAST_M).toFixed(7)}`,
    );
  await page.locator('[data-finish-drawing]').click();
  await expect(page.locator('[data-obstacle-fields]')).toBeVisible();
};

const importFile = (page: Page, name: string, text: string): Promise<void> =>
  field(page, 'import-outlines').setInputFiles({
    name,
    mimeType: 'application/geo+json',
    buffer: Buffer.from(text),
  });

test('a wall drawn by pointer south and east of the pier takes its morning sun, and undo gives it back', async ({
  page,
}) => {
  await openGround(page);
  const before = await figureText(page, 'first-sun');
  await page.locator('[data-draw="wall"]').click();
  await expect(page.locator('.spot-map-view')).toHaveCSS('cursor', 'crosshair');
  const corners = [
    { eastM: 25, northM: 40 },
    { eastM: 30, northM: -20 },
    { eastM: -20, northM: -30 },
  ];
  for (const corner of [...corners, { eastM: -20, northM: -30 }]) {
    const { x, y } = await pixelAt(page, corner);
    await page.mouse.click(x, y);
  }
  await expect(page.locator('[data-obstacle-fields]')).toBeVisible();
  await expect(page.locator('output.said')).toContainText('height taken as 2.0 m');
  await expect(figure(page, 'obstacle-dated')).toContainText('height assumed');
  await write(page, 'obstacle-height', '15');
  await expect(figure(page, 'first-sun')).not.toHaveText(before);
  const after = await figureText(page, 'first-sun');
  expect(figureNumber(after)).toBeGreaterThan(figureNumber(before));
  await expect(figure(page, 'obstacle-dated')).not.toContainText('assumed');

  const moved = await test.step('a corner dragged away is one step', async () => {
    const from = await pixelAt(page, { eastM: 30, northM: -20 });
    const to = await pixelAt(page, { eastM: 60, northM: -20 });
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 20 });
    await page.mouse.up();
    await expect(figure(page, 'first-sun')).not.toHaveText(after);
    return figureText(page, 'first-sun');
  });
  expect(figureNumber(moved)).toBeLessThan(figureNumber(after));
  await undo(page);
  await expect(figure(page, 'first-sun')).toHaveText(after);

  await test.step('undone step by step, the sun is back', async () => {
    await undo(page);
    await undo(page);
    await expect(figure(page, 'first-sun')).toHaveText(before);
    await expect(page.locator('[data-obstacle]')).toHaveCount(0);
  });

  await test.step('drawn again and kept: it is there after a reload', async () => {
    await page.locator('[data-redo]').click();
    await page.locator('[data-redo]').click();
    await expect(figure(page, 'first-sun')).toHaveText(after);
    await page.reload();
    await expect(figure(page, 'first-sun')).toHaveText(after);
    await expect(figure(page, 'shadows')).toContainText('on level ground');
  });
});

test('a building is drawn without a pointer: corners at the cross and typed', async ({ page }) => {
  await openGround(page);
  await page.locator('[data-draw="building"]').click();
  const map = page.locator('.spot-map-view');
  const finish = page.locator('[data-finish-drawing]');
  const pan = async (key: string, atS: number): Promise<void> => {
    const before = await spotPixel(page);
    await map.press(key);
    // The map glides by the clock, which stands still.
    await page.clock.setFixedTime(new Date(`2025-09-20T12:00:0${atS}+02:00`));
    await expect.poll(() => spotPixel(page)).not.toEqual(before);
  };
  await map.focus();
  await map.press('Enter');
  await pan('ArrowRight', 2);
  await map.press('Enter');
  await expect(finish).toHaveText('Finish with 2 corners');
  await expect(finish).toBeDisabled();
  await pan('ArrowDown', 4);
  await map.press('Enter');
  await write(page, 'new-corner', 'nowhere');
  await expect(page.locator('[data-ground] .fault')).toContainText(
    'expected latitude and longitude',
  );
  await expect(finish).toHaveText('Finish with 3 corners');
  await finish.click();
  await expect(figure(page, 'obstacle-line')).toContainText('building, 6.0 m');
  await page.locator('[data-open="corners"]').click();
  await expect(page.locator('[data-corner]')).toHaveCount(3);
  await undo(page);
  await expect(page.locator('[data-obstacle]')).toHaveCount(0);
});

test('every control of an obstacle moves its figure its way, leaves the others, and comes back by undo', async ({
  page,
}) => {
  test.slow();
  await openGround(page);
  await typeWall(page, [
    [60, -300],
    [60, 300],
  ]);
  await write(page, 'obstacle-height', '20');
  await setMinute(page, '06:50');
  await expect(figure(page, 'spot-in-shadow')).toContainText('in the shadow of Wall until');
  await openAll(page);
  const known = new Set([
    ...GROUND_CONTROLS.map((one) => one.field),
    ...Object.keys(GROUND_OTHERS),
  ]);
  const names = await page
    .locator('[data-ground] [data-field]')
    .evaluateAll((fields) => fields.map((one) => one.getAttribute('data-field') ?? ''));
  expect(names.length).toBeGreaterThan(5);
  expect(names.filter((name) => !known.has(name))).toEqual([]);
  await test.step('with everything open the panel breaks no rule of accessibility', async () => {
    const { violations, passes } = await new AxeBuilder({ page })
      .include('[data-ground]')
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(passes.length).toBeGreaterThan(0);
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target.join(' ')}`)).toEqual([]);
  });
  const pages = { fields: page, setup: page };
  for (const control of GROUND_CONTROLS)
    await test.step(`${control.field} moves ${control.moves}`, () => turnControl(pages, control));
});

/** Forty houses in rows south-east of the pier, 20 m long and wide; every other says its height. */
const fortyHouses = (): string =>
  JSON.stringify({
    type: 'FeatureCollection',
    features: Array.from({ length: 40 }, (_, index) => {
      const west = PIER.longitudeDeg + (40 + (index % 8) * 60) / EAST_M;
      const south = PIER.latitudeDeg - (60 + Math.floor(index / 8) * 60) / NORTH_M;
      const [east, north] = [west + 20 / EAST_M, south + 20 / NORTH_M];
      return {
        type: 'Feature',
        properties: {
          building: 'yes',
          name: index === 0 ? 'Net store <b>north</b>' : `House ${index + 1}`,
          ...(index % 2 === 0 ? { height: '10 m' } : {}),
        },
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              [west, south],
              [east, south],
              [east, north],
              [west, north],
              [west, south],
            ],
          ],
        },
      };
    }),
  });

test('forty outlines from a file: a preview, their shadows on the map, one taken over, one step of undo', async ({
  page,
}) => {
  await openGround(page);
  await setMinute(page, '18:00');
  await importFile(page, 'old-town.geojson', fortyHouses());
  await expect(figure(page, 'outlines-found')).toHaveText('40 outlines');
  await expect(figure(page, 'outlines-note')).toHaveText(
    '20 of 40 buildings had no height: taken as 6 m.',
  );
  await expect(page.locator('[data-outline-set]')).toHaveCount(0);
  await page.locator('[data-take-outlines]').click();
  await expect(figure(page, 'outline-set')).toContainText('40 outlines');

  await test.step('the first house throws its shadow as far as the cotangent says', async () => {
    // It stands 40 to 60 m east and 40 to 60 m south of the spot, 10 m high.
    const { altitude, azimuth } = sunAt('18:00');
    const lengthM = 10 / Math.tan(altitude * RAD);
    const eastM = -Math.sin(azimuth * RAD) * lengthM;
    const northM = -Math.cos(azimuth * RAD) * lengthM;
    const along = (share: number) =>
      pixelAt(page, { eastM: 60 + share * eastM, northM: -50 + share * northM });
    const pixels = [await along(0.1), await along(0.93), await along(1.07)];
    const beside = await pixelAt(page, { eastM: 38, northM: -50 });
    await expect.poll(() => shadowAt(page, [...pixels, beside])).toEqual([255, 255, 0, 0]);
  });

  await test.step('the shadows joined: their area, and a file of them', async () => {
    await page.locator('[data-join-shadows]').click();
    await expect(figure(page, 'shadow-area')).toBeVisible();
    // Footprint and swept strip of each: 20 · 20 + length · (20 |sin a| + 20 |cos a|); none overlap.
    const { altitude, azimuth } = sunAt('18:00');
    const across = 20 * (Math.abs(Math.sin(azimuth * RAD)) + Math.abs(Math.cos(azimuth * RAD)));
    const areaM2 = [10, 6].reduce(
      (sum, heightM) => sum + 20 * (400 + (heightM / Math.tan(altitude * RAD)) * across),
      0,
    );
    const text = (await figureText(page, 'shadow-area')).replace(',', '');
    const shown = Number.parseFloat(text) * (text.endsWith('ha') ? 10_000 : 1);
    expect(Math.abs(shown / areaM2 - 1)).toBeLessThan(0.01);
    const saved = page.waitForEvent('download');
    await page.locator('[data-save-shadows]').click();
    const file = JSON.parse(await readFile(await (await saved).path(), 'utf8')) as { type: string };
    expect(file.type).toMatch(/^Feature/);
  });

  await test.step('one of them is taken over by a click, in one step', async () => {
    await page.locator('[data-take-over]').click();
    const { x, y } = await pixelAt(page, { eastM: 50, northM: -50 });
    await page.mouse.click(x, y);
    await expect(page.locator('[data-obstacle]')).toHaveCount(1);
    await expect(field(page, 'obstacle-name')).toHaveValue('Net store north');
    await expect(field(page, 'obstacle-height')).toHaveValue('10');
    await expect(figure(page, 'outline-set')).toContainText('39 of 40 outlines');
    await undo(page);
    await expect(page.locator('[data-obstacle]')).toHaveCount(0);
    await expect(figure(page, 'outline-set')).toContainText(/^40 outlines/);
  });

  await test.step('one step of undo takes all of them out', async () => {
    await undo(page);
    await expect(page.locator('[data-outline-set]')).toHaveCount(0);
    const { x, y } = await pixelAt(page, { eastM: 50, northM: -50 });
    await expect.poll(() => shadowAt(page, [{ x, y }])).toEqual([0]);
  });
});

const collection = (coordinates: unknown): string =>
  JSON.stringify({
    type: 'FeatureCollection',
    features: [
      {
        type: 'Feature',
        properties: { building: 'yes' },
        geometry: { type: 'Polygon', coordinates },
      },
    ],
  });

const BAD_FILES = [
  { name: 'empty.geojson', text: '', says: /empty|nothing/i },
  { name: 'page.geojson', text: '<html><script>alert(1)</script></html>', says: /JSON/ },
  { name: 'cut.geojson', text: fortyHouses().slice(0, 900), says: /cut|breaks off/i },
  { name: 'list.geojson', text: '[1,2,3]', says: /expected/i },
  {
    name: 'metres.geojson',
    text: collection([
      [
        [401000, 5056000],
        [401020, 5056000],
        [401020, 5056020],
        [401000, 5056000],
      ],
    ]),
    says: /look like metres/,
  },
  {
    name: 'roads.geojson',
    text: '{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"highway":"path"},"geometry":{"type":"LineString","coordinates":[[13,45],[13.1,45]]}}]}',
    says: /none that can be used/,
  },
] as const;

test('a file that holds no outlines says why, and nothing changes', async ({ page }) => {
  await openGround(page);
  const sun = await figureText(page, 'first-sun');
  for (const { name, text, says } of BAD_FILES)
    await test.step(name, async () => {
      await importFile(page, name, text);
      await expect(figure(page, 'outlines-refused')).toContainText(`${name} was not taken in.`);
      await expect(figure(page, 'outlines-refused')).toContainText(says);
      await expect(page.locator('[data-outline-preview]')).toHaveCount(0);
    });
  await expect(page.locator('[data-outline-set]')).toHaveCount(0);
  await expect(figure(page, 'first-sun')).toHaveText(sun);
});

base.describe('outlines from the network', () => {
  test.use({ expectedErrors: [[/status of 504/], { scope: 'test' }] });

  test('are asked for only once switched on; what goes wrong is said, and can be cancelled', async ({
    page,
    footprints,
  }) => {
    await openGround(page);
    await page.locator('[data-open="footprints"]').click();
    await expect(field(page, 'footprints')).toBeDisabled();
    await write(page, 'footprints-address', 'http://maps.example/api');
    await expect(page.locator('[data-ground] .fault')).toContainText('expected the https address');
    await write(page, 'footprints-address', footprints.address);
    await expect(figure(page, 'footprints-privacy')).toContainText(new URL(footprints.origin).host);
    await expect(figure(page, 'footprints-privacy')).toContainText('0.6 × 0.6 km');
    await write(page, 'footprints-radius', '200');
    await expect(figure(page, 'footprints-privacy')).toContainText('0.4 × 0.4 km');
    await field(page, 'footprints').click();
    expect(footprints.asked).toEqual([]);

    const ask = page.locator('[data-fetch-footprints]');
    const failed = figure(page, 'footprints-failed');
    await test.step('an overloaded server, a web page, no answer', async () => {
      footprints.answerWith('overloaded');
      await ask.click();
      await expect(failed).toContainText('overloaded (504)');
      footprints.answerWith('web page');
      await ask.click();
      await expect(failed).toContainText('a web page instead of outlines');
      footprints.answerWith('never');
      await ask.click();
      await page.locator('[data-cancel-footprints]').click();
      await expect(ask).toBeVisible();
      await expect(failed).toHaveCount(0);
      await expect(page.locator('[data-outline-preview]')).toHaveCount(0);
    });

    await test.step('an answer is shown first, then taken in as one step', async () => {
      footprints.answerWith('outlines');
      await ask.click();
      await expect(figure(page, 'outlines-found')).toHaveText('4 outlines');
      await expect(figure(page, 'outlines-note')).toContainText('1 of 3 buildings had no height');
      await expect(page.locator('[data-outline-set]')).toHaveCount(0);
      await page.locator('[data-take-outlines]').click();
      await expect(figure(page, 'outline-set')).toContainText('as of 2027-05-01');
      await expect(figure(page, 'outline-set')).toContainText('invented database');
      await undo(page);
      await expect(page.locator('[data-outline-set]')).toHaveCount(0);
    });
    expect(footprints.asked).toHaveLength(4);
    expect(footprints.asked[0]).toContain('way["building"](45.648');
    expect(await page.title()).toBe('Undersky');
  });
});
