import type { Page } from '@playwright/test';

import { expect } from './app-page.ts';
import { figure, figureText } from './figure.ts';

export type MapPixel = { readonly x: number; readonly y: number };

/** Where the selected spot stands on the page. */
export const spotPixel = async (page: Page): Promise<MapPixel> => {
  const box = await page.locator('.selected .spot-dot').boundingBox();
  if (box === null) throw new Error('no spot is selected on the map');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

/** Opens Scout with the map close round the pier and the ground's panel beside it. */
export async function openGround(page: Page): Promise<void> {
  await page.goto('./#/scout');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await expect(figure(page, 'spot-name')).toHaveText('Pier head');
  await zoomToSpot(page);
  await page.locator('[data-open-ground]').click();
  await expect(page.locator('[data-ground]')).toBeVisible();
  await expect(figure(page, 'shadows')).toContainText('level ground');
}

/** To a scale of 20 m, then the spot into the middle. */
async function zoomToSpot(page: Page): Promise<void> {
  const scale = figure(page, 'map-scale');
  const shown = (): Promise<string> => scale.evaluate((bar) => bar.outerHTML);
  for (let turn = 0; turn < 12 && (await figureText(page, 'map-scale')) !== '20 m'; turn += 1) {
    const before = await shown();
    const { x, y } = await spotPixel(page);
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, -60);
    await expect.poll(shown).not.toBe(before);
  }
  await expect(scale).toHaveText('20 m');
  const box = await page.locator('.spot-map-view').boundingBox();
  if (box === null) throw new Error('the map has no size');
  const spot = await spotPixel(page);
  const from = { x: box.x + 120, y: box.y + 120 };
  const by = { x: box.x + box.width / 2 - spot.x, y: box.y + box.height / 2 - spot.y };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + by.x, from.y + by.y, { steps: 8 });
  await page.mouse.up();
  await expect
    .poll(async () => Math.abs((await spotPixel(page)).y - spot.y - by.y))
    .toBeLessThanOrEqual(2);
}

/** Pixels of the page for a metre, by the map's own scale bar. */
export const pixelsPerMetre = (page: Page): Promise<number> =>
  figure(page, 'map-scale').evaluate((bar) => {
    const metres = Number(/[\d.]+/.exec(bar.textContent ?? '')?.[0]);
    return Number.parseFloat((bar as HTMLElement).style.width) / metres;
  });

/** A place some metres from the spot, as a pixel of the page. */
export async function pixelAt(
  page: Page,
  { eastM, northM }: { readonly eastM: number; readonly northM: number },
): Promise<MapPixel> {
  const spot = await spotPixel(page);
  const perMetre = await pixelsPerMetre(page);
  return { x: spot.x + eastM * perMetre, y: spot.y - northM * perMetre };
}

/** How dark the canvas of shadows is at pixels of the page, 0 to 255 each. */
export const shadowAt = (page: Page, pixels: readonly MapPixel[]): Promise<readonly number[]> =>
  page.locator('canvas.ground-shadows').evaluate((node, wanted) => {
    const canvas = node as HTMLCanvasElement;
    const box = canvas.getBoundingClientRect();
    const context = canvas.getContext('2d');
    return wanted.map(({ x, y }) => {
      const scale = canvas.width / box.width;
      const atX = Math.round((x - box.left) * scale);
      const atY = Math.round((y - box.top) * scale);
      return context?.getImageData(atX, atY, 1, 1).data[3] ?? -1;
    });
  }, pixels);
