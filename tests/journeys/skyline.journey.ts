import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import type { Page } from '@playwright/test';

import { expect, test as base } from './support/app-page.ts';
import {
  png,
  startHeightServer,
  wallHgt,
  type HeightServer,
} from './support/elevation-fixtures.ts';
import { figure, figureNumber, figureText } from './support/figure.ts';

const test = base.extend<{ heights: HeightServer }>({
  heights: async ({}, use) => {
    const server = await startHeightServer();
    await use(server);
    await server.close();
  },
  allowedOrigins: async ({ heights }, use) => use([heights.origin]),
});

const RAD = Math.PI / 180;
const PIER = { latitudeDeg: 45.6503, longitudeDeg: 13.7621, cameraM: 1.4 };

const field = (page: Page, name: string) => page.locator(`[data-field="${name}"]`).first();

const write = async (page: Page, name: string, text: string): Promise<void> => {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
};

const openSkyline = async (page: Page): Promise<void> => {
  await page.goto('./#/scout');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await expect(figure(page, 'spot-name')).toHaveText('Pier head');
  await page.locator('[data-open="skyline"]').click();
  await expect(figure(page, 'source-terrain')).toBeVisible();
};

const openFile = (page: Page, name: string, file: string, bytes: Buffer): Promise<void> =>
  field(page, name).setInputFiles({
    name: file,
    mimeType: 'application/octet-stream',
    buffer: bytes,
  });

/** A wall 2000 m high along 13.85° E. */
const WALL = { column: 1020, heightM: 2000 };

/** The minute after midnight UTC at which half the sun's disc stands over that wall, seen from the pier. */
function sunOverWallMin(): number {
  // Radius of the parallel's normal at 45.65° N, WGS 84.
  const eastM =
    6_389_060 *
    Math.cos(PIER.latitudeDeg * RAD) *
    (13 + WALL.column / 1200 - PIER.longitudeDeg) *
    RAD;
  const observer = new Observer(PIER.latitudeDeg, PIER.longitudeDeg, 0);
  for (let minute = 180; minute < 720; minute += 1) {
    const at = new Date(Date.UTC(2027, 4, 14, 0, minute));
    const { ra, dec } = Equator(Body.Sun, at, observer, true, true);
    const { azimuth, altitude } = Horizon(at, observer, ra, dec, 'normal');
    const wayM = eastM / Math.sin(azimuth * RAD);
    const dropM = (0.87 * wayM * wayM) / (2 * 6_371_000);
    const edgeDeg = Math.atan((WALL.heightM - PIER.cameraM - dropM) / wayM) / RAD;
    if (azimuth > 45 && altitude > edgeDeg) return minute;
  }
  throw new Error('the sun never clears the wall');
}

test('an elevation file moves the first direct sun to where its ridge lets it, and undo brings it back', async ({
  page,
}) => {
  await openSkyline(page);
  const before = await figureText(page, 'first-sun');
  await expect(figure(page, 'source-terrain')).toContainText('none');

  await openFile(page, 'elevation-files', 'N45E013.hgt', wallHgt(WALL));
  await expect(figure(page, 'source-terrain')).toContainText('N45E013.hgt');
  await expect(figure(page, 'source-terrain')).toContainText('20 Sept 2025');
  await expect(figure(page, 'source-terrain')).toContainText('% of the round');
  const after = await figureText(page, 'first-sun');
  expect(figureNumber(after)).toBeGreaterThan(figureNumber(before));
  // Two hours of summer time; sectors of one degree hold their highest, and the clock shows whole minutes.
  expect(Math.abs(figureNumber(after) - (sunOverWallMin() + 120))).toBeLessThanOrEqual(1);
  await expect(figure(page, 'skyline-legend')).toContainText('terrain');
  await expect(figure(page, 'skyline-legend')).toContainText('trace');
  await expect(figure(page, 'ground-elevation')).toContainText(
    '0 m above sea level by the data, 3 m by the spot',
  );

  await test.step('a spot that moves is told to work it out again', async () => {
    await page.locator('[data-open="place"]').click();
    // 0.0005° of latitude are 56 m.
    await write(page, 'coordinates', '45.6508 N, 13.7621 E');
    await expect(figure(page, 'terrain-note')).toHaveText(
      'The spot has moved 56 m since: work it out again.',
    );
    await page.locator('[data-undo]').click();
    await expect(figure(page, 'terrain-note')).toHaveCount(0);
  });

  await test.step('it is one step of undo, and can be removed', async () => {
    await page.locator('[data-undo]').click();
    await expect(figure(page, 'first-sun')).toHaveText(before);
    await expect(figure(page, 'source-terrain')).toContainText('none');
    await page.locator('[data-redo]').click();
    await expect(figure(page, 'first-sun')).toHaveText(after);
    await page.locator('[data-clear-terrain]').click();
    await expect(figure(page, 'first-sun')).toHaveText(before);
  });
});

test('wrong files are named with what was found, and change nothing', async ({ page }) => {
  await openSkyline(page);
  const terrain = await figureText(page, 'source-terrain');
  const wrong: readonly (readonly [name: string, bytes: Buffer, sentence: RegExp])[] = [
    ['N45E013.hgt', Buffer.from('no heights'), /N45E013\.hgt.*expected.*found/i],
    ['hills.hgt', wallHgt(WALL), /hills\.hgt.*expected.*found/i],
    ['N10E020.hgt', wallHgt(WALL), /N10E020\.hgt lie elsewhere/],
    ['photo.jpeg', Buffer.from('x'), /photo\.jpeg.*expected.*\.hgt/],
    ['empty.tif', Buffer.alloc(0), /empty\.tif.*empty/],
    ['broken.tif', Buffer.from('II*\0 and then nothing of the kind'), /broken\.tif/],
  ];
  for (const [name, bytes, sentence] of wrong)
    await test.step(name, async () => {
      await openFile(page, 'elevation-files', name, bytes);
      await expect(figure(page, 'terrain-fault')).toHaveText(sentence);
      await expect(figure(page, 'source-terrain')).toHaveText(terrain);
    });
});

base.describe('elevation from the network', () => {
  test.use({ expectedErrors: [[/status of 503/], { scope: 'test' }] });

  test('is asked only once switched on, says what it sends, what went wrong, and can be cancelled', async ({
    page,
    heights,
  }) => {
    await openSkyline(page);
    await expect(field(page, 'elevation-network')).toBeDisabled();
    await write(page, 'elevation-address', 'http://example.org/{z}/{x}/{y}.png');
    await expect(page.locator('.fault')).toContainText('https://');
    await write(page, 'elevation-address', `${heights.origin}/{z}/{x}/{y}.png`);
    await expect(figure(page, 'elevation-privacy')).toContainText(
      `are asked of ${new URL(heights.origin).host}`,
    );
    await field(page, 'elevation-network').click();
    expect(heights.asked).toEqual([]);

    await page.locator('[data-ask-elevation]').click();
    await expect(figure(page, 'source-terrain')).toContainText(
      `elevation tiles of ${new URL(heights.origin).host}; ground 100 m`,
    );
    const said = await figureText(page, 'elevation-privacy');
    expect(heights.asked).toHaveLength(figureNumber(said));

    const terrain = await figureText(page, 'source-terrain');
    for (const [what, sentence] of [
      ['an error', /status 503/],
      ['a web page', /found a web page/],
    ] as const) {
      heights.answerWith(what);
      await page.locator('[data-ask-elevation]').click();
      await expect(figure(page, 'terrain-fault')).toHaveText(sentence);
      await expect(figure(page, 'source-terrain')).toHaveText(terrain);
    }

    heights.answerWith('nothing');
    await page.locator('[data-ask-elevation]').click();
    await page.locator('[data-cancel-terrain]').click();
    await expect(figure(page, 'terrain-fault')).toContainText('Cancelled');
    await expect(figure(page, 'source-terrain')).toHaveText(terrain);
    await expect(page.locator('[data-ask-elevation]')).toBeEnabled();

    await page.reload();
    await page.locator('[data-open="skyline"]').click();
    await expect(field(page, 'elevation-network')).toBeChecked();
  });
});

test('a list of pairs is pasted, its faulty lines named, and kept in one step', async ({
  page,
}) => {
  await openSkyline(page);
  const before = await figureText(page, 'source-trace');
  await page.locator('[data-trace-by="paste"]').click();
  await field(page, 'trace-text').fill('10 2\nten two\n20 95');
  await expect(page.getByText('line 2: found ‘ten two’')).toBeVisible();
  await expect(
    page.getByText('line 3: found ‘20 95’, expected an altitude from −10 to 89'),
  ).toBeVisible();
  await expect(page.locator('[data-keep-trace]')).toHaveCount(0);
  await field(page, 'trace-text').fill('10,2\n120,4\n240,30');
  await expect(figure(page, 'new-trace')).toHaveText(
    '3 points from 10° to 240°, highest 30.0° at 240°',
  );
  await field(page, 'trace-way').selectOption('replace');
  await page.locator('[data-keep-trace]').click();
  await expect(figure(page, 'source-trace')).toContainText(
    '3 points; points entered by hand, Sat 20 Sept 2025',
  );
  await page.locator('[data-undo]').click();
  await expect(figure(page, 'source-trace')).toHaveText(before);
});

type Held = { readonly azimuthDeg: number; readonly altitudeDeg: number };

/** Orientation events of a phone held flat, its top edge toward each direction in turn, 60 a second. */
const hold = (page: Page, sights: readonly Held[], fromNorth: boolean): Promise<void> =>
  page.evaluate(
    async ({ all, absolute }) => {
      for (const { azimuthDeg, altitudeDeg } of all) {
        window.dispatchEvent(
          new DeviceOrientationEvent(absolute ? 'deviceorientationabsolute' : 'deviceorientation', {
            alpha: (360 - azimuthDeg) % 360,
            beta: altitudeDeg,
            gamma: 0,
            absolute,
          }),
        );
        await new Promise((resolve) => setTimeout(resolve, 16));
      }
    },
    { all: sights, absolute: fromNorth },
  );

const sweep = (fromDeg: number, toDeg: number, altitudeDeg: number): readonly Held[] =>
  Array.from({ length: Math.abs(toDeg - fromDeg) * 3 + 1 }, (_, step) => ({
    azimuthDeg: fromDeg + (step / 3) * Math.sign(toDeg - fromDeg),
    altitudeDeg,
  }));

test('the phone held along the skyline records a trace, north set by a known bearing', async ({
  page,
}) => {
  await openSkyline(page);
  const before = await figureText(page, 'source-trace');
  await page.locator('[data-trace-by="phone"]').click();
  await page.locator('[data-start-sensor]').click();
  await hold(page, sweep(300, 301, 6), true);
  await expect(figure(page, 'phone-north')).toContainText(
    /Magnetic north, turned to true by \d\.\d° east/,
  );

  await write(page, 'north-bearing', '310');
  await page.locator('[data-set-north]').click();
  await expect(figure(page, 'phone-sight')).toHaveText('310° NW, 6.0° high');

  await page.locator('[data-record]').click();
  // 291° to 331° by the phone, 9° more by what was pointed at; at its ends smoothing takes a degree.
  await hold(page, sweep(291, 331, 6), true);
  await page.locator('[data-stop-recording]').click();
  await expect(figure(page, 'new-trace')).toHaveText(
    /^\d\d points from 30[01]° to (339|340)°, highest 6\.0° at \d+°$/,
  );
  await page.locator('[data-keep-trace]').click();
  await expect(figure(page, 'source-trace')).toContainText(
    'phone, held along the skyline, Sat 20 Sept 2025',
  );
  await expect(figure(page, 'skyline-origin')).toContainText('phone, held along the skyline');
  await page.locator('[data-undo]').click();
  await expect(figure(page, 'source-trace')).toHaveText(before);
});

test('a phone that does not know north must be told before it records', async ({ page }) => {
  await openSkyline(page);
  await page.locator('[data-trace-by="phone"]').click();
  await page.locator('[data-start-sensor]').click();
  await hold(page, sweep(10, 11, 3), false);
  await expect(figure(page, 'phone-north')).toContainText('set its north first');
  await expect(page.locator('[data-record]')).toBeDisabled();
  await page.locator('[data-set-north-by-sun]').click();
  await expect(page.locator('[data-record]')).toBeEnabled();
  // 20 September, 12:00 in central Europe: an hour and five minutes before the sun is due south.
  expect(figureNumber(await figureText(page, 'phone-sight'))).toBeGreaterThan(150);
  expect(figureNumber(await figureText(page, 'phone-sight'))).toBeLessThan(180);
});

test('without a sensor it says so after three seconds, and nothing changes', async ({ page }) => {
  await openSkyline(page);
  const before = await figureText(page, 'source-trace');
  await page.locator('[data-trace-by="phone"]').click();
  await page.locator('[data-start-sensor]').click();
  await expect(figure(page, 'no-sensor')).toContainText(
    'Nothing came from the orientation sensor for 3 seconds',
  );
  await expect(figure(page, 'source-trace')).toHaveText(before);
  await expect(page.locator('[data-start-sensor]')).toBeEnabled();
});

/** A level camera that looks to 300°, 1000 px to the picture's plane, 1200 × 800 px. */
const SHOT = { widthPx: 1200, heightPx: 800, bearingDeg: 300, focalPx: 1000 };

/** Where a direction falls in that picture. */
const inShot = (
  azimuthDeg: number,
  altitudeDeg: number,
): { readonly x: number; readonly y: number } => {
  const turn = (azimuthDeg - SHOT.bearingDeg) * RAD;
  return {
    x: SHOT.widthPx / 2 + SHOT.focalPx * Math.tan(turn),
    y: SHOT.heightPx / 2 - (SHOT.focalPx * Math.tan(altitudeDeg * RAD)) / Math.cos(turn),
  };
};

test('a line along the skyline of a photo, between two known points, becomes the trace', async ({
  page,
}) => {
  await openSkyline(page);
  await page.locator('[data-trace-by="photo"]').click();
  await openFile(page, 'trace-photo', 'notes.txt', Buffer.from('no picture'));
  await expect(figure(page, 'photo-fault')).toContainText(
    'notes.txt could not be opened: found nothing this browser can show',
  );

  const picture = png(SHOT, (_, y) => (y < 300 ? [220, 220, 220] : [40, 40, 40]));
  await field(page, 'trace-photo').setInputFiles({
    name: 'ridge.png',
    mimeType: 'image/png',
    buffer: picture,
  });
  const stage = page.locator('[data-photo-stage]');
  await page.locator('[data-zoom="2"]').click();
  await stage.scrollIntoViewIfNeeded();
  const put = async (place: { readonly x: number; readonly y: number }): Promise<void> => {
    const box = await stage.boundingBox();
    if (box === null) throw new Error('the stage has no box');
    await stage.click({
      position: {
        x: (place.x / SHOT.widthPx) * box.width,
        y: (place.y / SHOT.heightPx) * box.height,
      },
    });
  };
  const known = { first: [275, 2], second: [325, 5] } as const;
  await page.locator('[data-mark="1"]').click();
  await put(inShot(...known.first));
  await page.locator('[data-mark="2"]').click();
  await put(inShot(280, 2));
  await write(page, 'known-azimuth-1', '275');
  await write(page, 'known-altitude-1', '2');
  await write(page, 'known-azimuth-2', '276');
  await write(page, 'known-altitude-2', '2');
  await expect(figure(page, 'photo-sight')).toContainText('too close to fix the scale');
  await put(inShot(...known.second));
  await write(page, 'known-azimuth-2', '325');
  await write(page, 'known-altitude-2', '5');
  // 2·atan(600/1000) = 61.9°
  await expect(figure(page, 'photo-sight')).toContainText(/^62° wide, its middle at 300° WNW/);

  await page.locator('[data-draw-line]').click();
  for (const x of [150, 400, 700]) await put({ x, y: 300 });
  const points = (): Promise<number> =>
    figureText(page, 'new-trace').then((text) => figureNumber(text));
  const drawn = await points();
  await test.step('a point more by keys alone', async () => {
    await stage.focus();
    // From the last mark, 700 px across, 5 % of the width at a time.
    for (let step = 0; step < 5; step += 1) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Enter');
    await expect.poll(points).toBeGreaterThan(drawn);
    await page.keyboard.press('Backspace');
    await expect.poll(points).toBe(drawn);
    await page.keyboard.press('Enter');
    await expect.poll(points).toBeGreaterThan(drawn);
  });
  await field(page, 'trace-way').selectOption('replace');
  await page.locator('[data-keep-trace]').click();
  await expect(figure(page, 'source-trace')).toContainText('photo ridge.png, Sat 20 Sept 2025');

  const traced = await page
    .locator('[data-skyline-point]')
    .evaluateAll((rows) =>
      rows.map((row) =>
        ['azimuth', 'altitude'].map((name) =>
          Number(
            row
              .querySelector<HTMLInputElement>(`[data-field="skyline-${name}"]`)
              ?.value.replace('−', '-'),
          ),
        ),
      ),
    );
  const above = traced.filter(([, altitudeDeg = 0]) => altitudeDeg > 1);
  expect(above.length).toBeGreaterThan(15);
  for (const [azimuthDeg = NaN, altitudeDeg = NaN] of above) {
    // The line lies 100 px above the middle: tan altitude = (100/1000)·cos(turn).
    const expectedDeg = Math.atan(0.1 * Math.cos((azimuthDeg - SHOT.bearingDeg) * RAD)) / RAD;
    // A click is good to a pixel of the screen, a tenth of a degree here, and the table shows tenths.
    expect(Math.abs(altitudeDeg - expectedDeg), `at ${azimuthDeg}°`).toBeLessThan(0.3);
  }
  // 700 + 5·60 px: 21.8° right of the middle.
  expect(Math.max(...above.map(([azimuthDeg = NaN]) => azimuthDeg))).toBeCloseTo(321.8, 0);
});
