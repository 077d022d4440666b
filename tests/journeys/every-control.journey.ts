import type { BrowserContext, Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';
import { fieldNames, openAll, turnControl, type Control } from './support/control.ts';
import { SETUP_CONTROLS, SETUP_OTHERS } from './support/controls-of-setup.data.ts';
import { figure } from './support/figure.ts';

test.describe.configure({ timeout: 180_000 });

const openQuartet = async (page: Page): Promise<void> => {
  await page.goto('./#/setup');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await page.locator('[data-field="setup"]').selectOption('quartet');
  await expect(figure(page, 'setup-name')).toHaveText('Four on the pier head');
  await expect(figure(page, 'in-hand')).toContainText('in hand');
  await openAll(page);
};

const expectKnown = async (
  page: Page,
  controls: readonly Control[],
  others: Readonly<Record<string, string>>,
): Promise<void> => {
  const known = new Set([...controls.map(({ field }) => field), ...Object.keys(others)]);
  const unknown = (await fieldNames(page)).filter((name) => !known.has(name));
  expect(unknown, 'fields of which nothing is known').toEqual([]);
};

test('every control of Setup moves its figure, and undo puts it back', async ({ page }) => {
  await openQuartet(page);
  await expectKnown(page, SETUP_CONTROLS, SETUP_OTHERS);
  for (const control of SETUP_CONTROLS)
    await test.step(`${control.field} moves ${control.moves}`, () => turnControl({ fields: page, setup: page }, control));
});
