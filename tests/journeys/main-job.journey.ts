import type { Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';

const figure = (page: Page, name: string) => page.locator(`[data-figure="${name}"]`).first();
const field = (page: Page, name: string) => page.locator(`[data-field="${name}"]`).first();

/** The number in a text such as 'EV 13.8 ± 1.6' or '0.6 in hand'. */
const firstNumber = (text: string | null): number =>
  Number(/[−-]?\d+(\.\d+)?/.exec(text ?? '')?.[0].replace('−', '-'));

const write = async (page: Page, name: string, text: string): Promise<void> => {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
};

const minutesOf = (clock: string): number => {
  const [hours = NaN, minutes = NaN] = clock.split(':').map(Number);
  return hours * 60 + minutes;
};

/** The minute in the middle of the last span of '05:08 to 07:07, 19:46 to 21:06'. */
const middleOf = (spans: string | null): string => {
  const [from = '', to = ''] = (spans ?? '').split(', ').at(-1)?.split(' to ') ?? [];
  const middle = Math.round((minutesOf(from) + minutesOf(to)) / 2);
  return `${String(Math.floor(middle / 60)).padStart(2, '0')}:${String(middle % 60).padStart(2, '0')}`;
};

/** Moves the pointer down the columns to a clock time; gives the height it came to. */
const hover = async (page: Page, clock: string): Promise<number> => {
  const cursor = field(page, 'minute');
  const dayMin = Number(await cursor.getAttribute('aria-valuemax'));
  const sinceStart = Number(await cursor.getAttribute('aria-valuenow'));
  const startMin = minutesOf((await cursor.getAttribute('aria-valuetext')) ?? '') - sinceStart;
  const box = await page.locator('[data-column] [data-plot]').first().boundingBox();
  if (box === null) throw new Error('the first column has no box');
  const y = box.y + (box.height * (minutesOf(clock) - startMin)) / dayMin;
  await page.mouse.move(box.x + box.width / 2, y);
  // A pixel is more than a minute.
  await expect
    .poll(async () =>
      Math.abs(minutesOf((await figure(page, 'day-clock').textContent()) ?? '') - minutesOf(clock)),
    )
    .toBeLessThanOrEqual(2);
  return y;
};

test('from first start to a pinned recipe that is still there after a reload', async ({ page }) => {
  await test.step('the demo opens on the map with its first figures', async () => {
    await page.goto('./');
    await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
    await expect(figure(page, 'spot-name')).toHaveText('Pier head');
  });

  const holds =
    await test.step('turning the camera by the wedge moves the sky in the frame', async () => {
      const before = await figure(page, 'patch-ev').textContent();
      const handle = page.getByRole('slider', { name: /Pier head/ });
      await handle.focus();
      for (let turn = 0; turn < 3; turn += 1) await handle.press('Shift+ArrowRight');
      await handle.blur();
      await expect(field(page, 'bearing')).toHaveValue('330');
      await expect(figure(page, 'patch-ev')).not.toHaveText(before ?? '');
      await expect(figure(page, 'holds')).toHaveText(/\d\d:\d\d to \d\d:\d\d$/);
      return figure(page, 'holds').textContent();
    });

  await test.step('the day shows where the lights reach, and the cursor reads it', async () => {
    await page.getByRole('link', { name: 'Day', exact: true }).first().click();
    const columns = page.locator('[data-column]');
    await expect(columns).toHaveCount(4);
    const afternoon = await hover(page, '15:00');
    await expect(figure(page, 'day-in-hand')).toContainText(/short by|too much/i);
    const evening = await hover(page, middleOf(holds));
    await expect(figure(page, 'day-in-hand')).toContainText('in hand');
    expect(evening).toBeGreaterThan(afternoon);
  });

  await test.step('the setup gives the recipe in working order', async () => {
    await page.getByRole('link', { name: 'Setup', exact: true }).first().click();
    await field(page, 'setup').selectOption({ label: '20:00 Four on the pier head' });
    await expect(figure(page, 'shutter')).toContainText('1/250');
    await expect(figure(page, 'aperture')).toContainText('f/');
    await expect(page.locator('[data-step="key"] .power')).toContainText('below full');
    await expect(figure(page, 'meter-key')).toContainText('f/');
    await expect(figure(page, 'recycle')).toContainText('s');
    await expect(figure(page, 'pops')).toContainText(/\d/);
  });

  const pinned = await test.step('pinning the power of the key keeps it', async () => {
    const power = (await figure(page, 'power-key').textContent()) ?? '';
    await page.locator('[data-pin="power-key"]').click();
    await expect(page.locator('[data-pin="power-key"]')).toHaveAttribute('aria-pressed', 'true');
    await expect(figure(page, 'power-key')).toHaveText(power);
    return field(page, 'pinned-power-key').inputValue();
  });
  expect(firstNumber(pinned)).toBeGreaterThan(0);

  await test.step('a metered shot makes the head one’s own', async () => {
    await page.getByRole('link', { name: 'Kit', exact: true }).first().click();
    await write(page, 'reading-f-number', '16');
    await page.locator('[data-keep-reading]').first().click();
    await expect(page.locator('[data-drop-reading]').first()).toBeVisible();
    await expect(figure(page, 'meter-reflector')).toHaveText('f/16');
  });

  await test.step('after a reload all of it is still there', async () => {
    await page.reload();
    await expect(figure(page, 'meter-reflector')).toHaveText('f/16');
    await page.getByRole('link', { name: 'Setup', exact: true }).first().click();
    await field(page, 'setup').selectOption({ label: '20:00 Four on the pier head' });
    await expect(field(page, 'pinned-power-key')).toHaveValue(pinned);
    // The head is two stops weaker than it was, and its power is decided.
    await expect(figure(page, 'problem')).toContainText('Short by');
    await page.getByRole('link', { name: 'Scout', exact: true }).first().click();
    await expect(field(page, 'bearing')).toHaveValue('330');
  });

  await test.step('undo takes the reading back and leaves the bearing', async () => {
    await page.locator('[data-undo]').click();
    await page.getByRole('link', { name: 'Kit', exact: true }).first().click();
    await expect(figure(page, 'meter-reflector')).not.toHaveText('f/16');
    await page.getByRole('link', { name: 'Scout', exact: true }).first().click();
    await expect(field(page, 'bearing')).toHaveValue('330');
  });
});
