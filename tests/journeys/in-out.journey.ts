import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';

import { ascii, jpegWithInFront, rational, short } from '../support/exif-file.ts';
import { expect, test } from './support/app-page.ts';
import { figure } from './support/figure.ts';

const openScout = async (page: Page): Promise<void> => {
  await page.goto('./#/scout');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
};

const field = (page: Page, name: string) => page.locator(`[data-field="${name}"]`).first();
const spots = (page: Page) => field(page, 'spot').locator('option');

const GPX = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="by hand" xmlns="http://www.topografix.com/GPX/1/1">
  <wpt lat="45.6412" lon="13.7588"><ele>4</ele><name>Fish market steps</name><desc>Wet at high water</desc></wpt>
  <wpt lat="45.65031" lon="13.76212"><name>Pier again</name></wpt>
</gpx>`;

/** A picture that the browser itself makes, with what a camera would have written in front. */
async function scoutingPhoto(page: Page): Promise<Buffer> {
  const plain = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(300, 200);
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('no canvas');
    context.fillStyle = '#6d7f99';
    context.fillRect(0, 0, 300, 120);
    context.fillStyle = '#30302c';
    context.fillRect(0, 120, 300, 80);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  return Buffer.from(
    jpegWithInFront(Uint8Array.from(plain), {
      exif: {
        0x829a: rational([1, 250]),
        0x829d: rational([8, 1]),
        0x8827: short(100),
        0x9003: ascii('2025:09:19 18:30:00'),
        0x9011: ascii('+02:00'),
        0x920a: rational([35, 1]),
      },
      gps: {
        1: ascii('N'),
        2: rational([45, 1], [38, 1], [24, 1]),
        3: ascii('E'),
        4: rational([13, 1], [46, 1], [12, 1]),
        16: ascii('T'),
        17: rational([280, 1]),
      },
    }),
  );
}

test('last weekend’s photos and a waypoint file become spots, as one step that undo takes back', async ({
  page,
}) => {
  await openScout(page);
  await expect(spots(page)).toHaveCount(4);
  await page.locator('[data-open-in-out]').click();
  await field(page, 'bring-in-files').setInputFiles([
    { name: 'weekend.gpx', mimeType: 'application/gpx+xml', buffer: Buffer.from(GPX) },
    { name: 'scout-07.jpg', mimeType: 'image/jpeg', buffer: await scoutingPhoto(page) },
  ]);
  const brought = page.locator('[data-brought]');
  await expect(brought).toHaveCount(3);
  await expect(brought.nth(0)).toContainText('Fish market steps');
  await expect(brought.nth(1)).toContainText('Already a spot: Pier head');
  await expect(brought.nth(1).locator('input')).not.toBeChecked();
  await expect(brought.nth(2)).toContainText('scout-07');
  await expect(brought.nth(2)).toContainText('a new spot with 1 photo');
  await expect(spots(page), 'nothing changed before it was said').toHaveCount(4);
  await page.locator('[data-take-in]').click();
  await expect(spots(page)).toHaveCount(6);

  await field(page, 'spot').selectOption({ label: 'scout-07' });
  await expect(figure(page, 'coordinates')).toHaveText('45.6400° N, 13.7700° E');
  await expect(figure(page, 'camera-faces')).toContainText('280° W');
  await page.locator('[data-open="photos"]').click();
  // 1/250 s at f/8, ISO 100: log2(64 · 250) = 13.97.
  await expect(page.locator('.photo-list')).toContainText('EV 14.0');
  const [photo] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('[data-save-photo]').click(),
  ]);
  const saved = await readFile(await photo.path());
  expect(saved.includes('Exif'), 'a photo leaves without what the camera wrote').toBe(false);
  expect(saved.subarray(0, 2).toString('hex'), 'as a JPEG').toBe('ffd8');

  await page.reload();
  await expect(spots(page), 'kept across a reload').toHaveCount(6);
  await page.locator('[data-undo]').click();
  await expect(spots(page), 'one step').toHaveCount(4);
});

test('a scouting photo is shown as the recipe’s settings would have taken it', async ({ page }) => {
  await openScout(page);
  await page.locator('[data-open="photos"]').click();
  await page.locator('input[data-add-photos]').setInputFiles({
    name: 'scout-07.jpg',
    mimeType: 'image/jpeg',
    buffer: await scoutingPhoto(page),
  });
  await expect(page.locator('.photo-list')).toContainText('EV 14.0');
  await page.goto('./#/setup');
  await field(page, 'setup').selectOption('quartet');
  await field(page, 'frame-shown').selectOption({ index: 1 });
  const shown = figure(page, 're-exposed');
  // Taken at EV 14.0; the recipe's own exposure stands in its first step.
  await expect(shown).toContainText('stops against the photo');
  const canvas = page.locator('canvas[data-drawn]');
  await expect(canvas).toBeVisible();
  const blueOverRed = (): Promise<number> =>
    canvas.evaluate((element) => {
      const context = (element as HTMLCanvasElement).getContext('2d');
      const [red = NaN, , blue = NaN] = context?.getImageData(20, 20, 1, 1).data ?? [];
      return blue / red;
    });
  const before = await blueOverRed();
  await page.locator('details').evaluateAll((all) => {
    for (const details of all) (details as HTMLDetailsElement).open = true;
  });
  await field(page, 'white-balance-kelvin').fill('3200');
  await field(page, 'white-balance-kelvin').press('Enter');
  await expect.poll(blueOverRed).toBeGreaterThan(before * 1.2);
});

test('coordinates pasted on the map, whatever their notation, are looked at first', async ({
  page,
}) => {
  await openScout(page);
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.setData(
      'text/plain',
      'Steps, 45°38′24″ N 13°46′12″ E\ngeo:45.6601,13.7702\nnowhere at all',
    );
    window.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data }));
  });
  await expect(page.locator('[data-brought="add"]')).toHaveCount(2);
  await expect(page.locator('[data-note="brought-notes"]')).toContainText('nowhere');
  await page.locator('[data-take-in]').click();
  await expect(spots(page)).toHaveCount(6);
  await expect(figure(page, 'spot-name')).toHaveText('Steps');
});

test('files that hold no place get a sentence each and change nothing', async ({ page }) => {
  await openScout(page);
  const bombs =
    '<!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa">]><gpx><wpt lat="1" lon="1"><name>&a;</name></wpt></gpx>';
  const cases = [
    { name: 'page.gpx', text: '<!doctype html><title>Sign in</title>', says: /web page/ },
    { name: 'bomb.gpx', text: bombs, says: /entit|DOCTYPE/i },
    {
      name: 'cut.kml',
      text: '<kml xmlns="http://www.opengis.net/kml/2.2"><Placemark>',
      says: /cut\.kml/,
    },
    { name: 'far.csv', text: 'lat,lon\n412,13\n', says: /412/ },
    { name: 'photo.jpg', text: 'no picture', says: /photo\.jpg/ },
    { name: 'empty.csv', text: '', says: /empty/ },
  ];
  await page.locator('[data-open-in-out]').click();
  for (const { name, text, says } of cases)
    await test.step(name, async () => {
      await field(page, 'bring-in-files').setInputFiles({
        name,
        mimeType: 'application/octet-stream',
        buffer: Buffer.from(text),
      });
      await expect(page.locator('[data-note="nothing-found"]')).toContainText(says);
    });
  await page.keyboard.press('Escape');
  await expect(spots(page)).toHaveCount(4);
});

test('spots leave as a waypoint file, without the notes that were not chosen', async ({ page }) => {
  await openScout(page);
  await page.locator('[data-open-in-out]').click();
  await page.locator('[data-take-out]').click();
  await field(page, 'take-out-karst').click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('[data-save-spots]').click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.gpx$/);
  const text = await readFile(await download.path(), 'utf8');
  expect(text).toContain('Pier head');
  expect(text).not.toContain('Karst edge');
  expect(text, 'whom permission was asked of stays here').not.toContain('Port office');
});

test('spots stand in one table, sorted by what matters, any two beside each other', async ({
  page,
}) => {
  await openScout(page);
  await page.locator('[data-open-compare]').click();
  const rows = page.locator('[data-compared]');
  await expect(rows).toHaveCount(4);
  await expect(page.locator('[data-compared="pier"] [data-cell="sky"]')).toHaveText(
    /EV \d+\.\d ± \d\.\d/,
  );
  await page.locator('[data-sort="Walk-in"]').click();
  const walks = await rows.locator('[data-cell="walk-in"]').allTextContents();
  expect(walks.map((text) => Number.parseInt(text))).toEqual([3, 4, 8, 12]);
  await page.locator('[data-sort="Walk-in"]').click();
  await expect(rows.first()).toHaveAttribute('data-compared', 'karst');
  const own = await page.locator('[data-compared="karst"] [data-cell="window"]').textContent();
  await field(page, 'compare-lights').selectOption('quartet');
  await expect
    .poll(() => page.locator('[data-compared="karst"] [data-cell="window"]').textContent())
    .not.toBe(own);
  await field(page, 'beside-pier').check();
  await field(page, 'beside-karst').check();
  await expect(page.locator('[data-side]')).toHaveCount(2);
});

test('what is noted of a site is listed, ticked off, and its permission checked against the date', async ({
  page,
}) => {
  await openScout(page);
  const lines = figure(page, 'ground-lines');
  await page.locator('[data-open="surfaces"]').click();
  await page.locator('[data-add-surface]').click();
  await expect(lines).toContainText('White wall (wall) 80 %');
  await field(page, 'surface-reflectance').fill('0.5');
  await field(page, 'surface-reflectance').press('Enter');
  await expect(lines).toContainText('50 %');
  await field(page, 'surface-kind').selectOption('ground');
  await page.locator('[data-use-as-ground]').click();
  await expect(field(page, 'ground-reflectance')).toHaveValue('0.5');
  await page.locator('[data-open="contacts"]').click();
  await page.locator('[data-add-contact]').click();
  await field(page, 'contact-role').fill('Harbour master');
  await field(page, 'contact-role').press('Enter');
  await expect(lines).toContainText('Harbour master');
  await page.locator('[data-open="checklist"]').click();
  await page.locator('[data-fill-checklist]').click();
  await expect(lines).toContainText('0 of 16 done');
  await field(page, 'check-done').click();
  await expect(lines).toContainText('1 of 16 done');
});
