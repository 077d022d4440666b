import type { Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';
import { figure, figureText } from './support/figure.ts';

const field = (page: Page, name: string) => page.locator(`[data-field="${name}"]`).first();

const openSetup = async (page: Page, name: string): Promise<void> => {
  await page.goto('./#/setup');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await field(page, 'setup').selectOption(name);
  await page.locator('details').evaluateAll((all) => {
    for (const details of all) (details as HTMLDetailsElement).open = true;
  });
};

const put = async (page: Page, name: string, text: string): Promise<void> => {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
  await expect(field(page, name)).toHaveValue(text);
};

/** The mean red, green and blue of a part of the drawn frame. */
const seenColour = (page: Page, part: 'sky' | 'all'): Promise<readonly number[]> =>
  page.locator('canvas[data-figure="predicted-frame"][data-drawn]').evaluate((canvas, which) => {
    const { width, height } = canvas as HTMLCanvasElement;
    const context = (canvas as HTMLCanvasElement).getContext('2d');
    if (context === null) throw new Error('no canvas');
    const rows = which === 'sky' ? height / 4 : height;
    const { data } = context.getImageData(0, 0, width, rows);
    const sum = [0, 0, 0];
    for (let at = 0; at < data.length; at += 4)
      for (const channel of [0, 1, 2])
        sum[channel] = (sum[channel] ?? 0) + (data[at + channel] ?? 0);
    return sum.map((value) => (4 * value) / data.length);
  }, part);

test('a key and a fill for four people: bounced, gelled, metered, and the frame follows', async ({
  page,
}) => {
  await openSetup(page, 'quartet');
  // Late enough for a bounced and gelled key.
  await put(page, 'start-clock', '20:50');
  await put(page, 'hold-stops', '0');
  await put(page, 'rows', '2');
  await expect(page.locator('[data-drawn]')).toBeVisible();
  const meter = () => page.locator('.set-this').innerText();
  expect(await meter(), 'the middle face and its ends are metered').toMatch(/f\/\d/);

  await test.step('bounced off a wall, the key is softer and asks for more power', async () => {
    const before = await figureText(page, 'softness-key');
    await field(page, 'bounced-key').click();
    await expect.poll(() => figureText(page, 'softness-key')).not.toBe(before);
    await expect(page.locator('[data-field="bounce-reflectance-key"]')).toBeVisible();
    await page.locator('[data-undo]').click();
    await expect.poll(() => figureText(page, 'softness-key')).toBe(before);
  });

  await test.step('a tungsten balance turns the sky blue, pixel by pixel', async () => {
    const before = await seenColour(page, 'sky');
    await put(page, 'white-balance-kelvin', '3200');
    await expect
      .poll(async () => {
        const [red = NaN, , blue = NaN] = await seenColour(page, 'sky');
        return blue / red;
      })
      .toBeGreaterThan(1.3 * ((before[2] ?? NaN) / (before[0] ?? NaN)));
  });

  await test.step('a gel on both lights costs power and brings the faces back to neutral', async () => {
    const before = await figureText(page, 'in-hand');
    await field(page, 'gel-key').selectOption('cto-half');
    await field(page, 'gel-fill').selectOption('cto-half');
    await expect.poll(() => figureText(page, 'in-hand')).not.toBe(before);
  });

  await test.step('a light is dragged in the sketch, one edit, and its distance follows', async () => {
    const light = page.locator('[data-sketch-light="key"]');
    await light.scrollIntoViewIfNeeded();
    const before = await light.getAttribute('aria-valuetext');
    await light.focus();
    await page.keyboard.press('Shift+ArrowUp');
    await expect.poll(() => light.getAttribute('aria-valuetext')).not.toBe(before);
    await expect(field(page, 'distance-key')).toHaveValue('3.7');
    const grip = await light.locator('.grip').boundingBox();
    if (grip === null) throw new Error('the key has no place in the sketch');
    const [x, y] = [grip.x + grip.width / 2, grip.y + grip.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 30, y + 10, { steps: 5 });
    await page.mouse.up();
    await expect(field(page, 'distance-key')).not.toHaveValue('3.7');
    await page.locator('[data-undo]').click();
    await expect(field(page, 'distance-key')).toHaveValue('3.7');
    await page.locator('[data-undo]').click();
    await expect(field(page, 'distance-key')).toHaveValue('4.2');
  });
});

test('one meter reading at home makes a head’s figure the user’s own, and the setups know at once', async ({
  page,
}) => {
  await page.goto('./#/kit');
  await page.locator('[data-shelf="heads"]').click();
  const item = page.locator('li', {
    has: page.locator('summary', { hasText: 'Battery head, 400 Ws' }),
  });
  await item.locator('summary').first().click();
  await item.locator('[data-field="reading-modifier"]').selectOption('umbrella');
  const fill = async (name: string, text: string): Promise<void> => {
    await item.locator(`[data-field="${name}"]`).fill(text);
    await item.locator(`[data-field="${name}"]`).press('Enter');
  };
  await fill('reading-distance', '2');
  await fill('reading-f-number', '16');
  await expect(item.locator('[data-figure="reading-guide-number"]')).toBeVisible();
  await item.locator('[data-keep-reading]').click();
  await expect(item).toContainText(/1 metered shot|metered/);
  await page.goto('./#/setup');
  await field(page, 'setup').selectOption('quartet');
  await expect(page.locator('.set-this')).toContainText('metered');
  await expect(figure(page, 'in-hand')).toBeVisible();
});
