import { expect, test } from './support/app-page.ts';

test('the built app opens, keeps to its own origin and reports no error', async ({ page }) => {
  await page.goto('./');
  await expect(page).toHaveTitle(/Undersky/);
  await expect(page.getByRole('heading').first()).toBeVisible();
});

test('where the numbers come from can be read in the app', async ({ page }) => {
  await page.goto('./');
  await page.locator('[data-open-shoot-sheet]').click();
  await page.getByText('Where the numbers come from').click();
  await expect(page.getByText('ISO 15469:2004', { exact: false }).first()).toBeVisible();
});
