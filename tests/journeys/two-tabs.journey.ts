import type { Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';
import { figure } from './support/figure.ts';

const field = (page: Page, name: string) => page.locator(`[data-field="${name}"]`).first();

const type = async (page: Page, name: string, text: string): Promise<void> => {
  await page.bringToFront();
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
};

const undo = async (page: Page): Promise<void> => {
  await page.bringToFront();
  await page.locator('[data-undo]').click();
};

test('two tabs on one shoot see each other’s edits, and each undoes only its own', async ({
  page: scout,
  context,
}) => {
  await scout.goto('./#/scout');
  await expect(field(scout, 'tilt')).toHaveValue(/\d/);
  const setup = await context.newPage();
  await setup.goto('./#/setup');
  await field(setup, 'setup').selectOption('quartet');
  await expect(figure(setup, 'where-and-when')).toContainText('faces 300°');
  const tilt = await field(scout, 'tilt').inputValue();

  await test.step('an edit in one is in the other without a reload', async () => {
    await type(scout, 'bearing', '330');
    await expect(figure(setup, 'where-and-when')).toContainText('faces 330°');
    await expect(field(setup, 'bearing')).toHaveValue('330');
    await setup.bringToFront();
    await field(setup, 'condition').selectOption('clear');
    await expect(field(scout, 'condition')).toHaveValue('clear');
  });

  await test.step('undo in one leaves the other’s edit, whichever came later', async () => {
    await undo(scout);
    await expect(field(scout, 'bearing')).toHaveValue('300');
    await expect(field(scout, 'condition')).toHaveValue('clear');
    await expect(figure(setup, 'where-and-when')).toContainText('faces 300°');
    await undo(scout);
    await expect(scout.locator('output.said')).toHaveText('Nothing of this tab is left to undo');
    await expect(field(setup, 'condition')).toHaveValue('clear');
  });

  await test.step('undo of a field that the other has changed since leaves it and says so', async () => {
    await type(scout, 'tilt', '9');
    await expect(field(setup, 'tilt')).toHaveValue('9');
    await type(scout, 'focal-length', '40');
    await expect(field(setup, 'focal-length')).toHaveValue('40');
    await setup.bringToFront();
    await setup.evaluate(() => {
      window.location.hash = '#/scout';
    });
    await type(setup, 'focal-length', '50');
    await expect(field(scout, 'focal-length')).toHaveValue('50');
    await undo(scout);
    await expect(scout.locator('output.said')).toContainText(/focal length.*/i);
    await expect(field(scout, 'focal-length')).toHaveValue('50');
    await expect(field(scout, 'tilt')).toHaveValue('9');
  });

  await test.step('a reload keeps what there is to undo', async () => {
    await scout.reload();
    await expect(field(scout, 'tilt')).toHaveValue('9');
    await undo(scout);
    await expect(field(scout, 'tilt')).toHaveValue(tilt);
    await expect(field(scout, 'focal-length')).toHaveValue('50');
    await scout.locator('[data-redo]').click();
    await expect(field(scout, 'tilt')).toHaveValue('9');
  });

  await test.step('with both closed and one opened again everything is there', async () => {
    await setup.close();
    const again = await context.newPage();
    await scout.close();
    await again.goto('./#/scout');
    await expect(field(again, 'tilt')).toHaveValue('9');
    await expect(field(again, 'focal-length')).toHaveValue('50');
    await expect(field(again, 'condition')).toHaveValue('clear');
    await again.evaluate(() => {
      window.location.hash = '#/setup';
    });
    await field(again, 'setup').selectOption('quartet');
    await expect(figure(again, 'where-and-when')).toContainText('50 mm, tilt +9°');
  });
});
