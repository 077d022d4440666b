import { expect, test } from './support/app-page.ts';

test('the built app opens, keeps to its own origin and reports no error', async ({ page }) => {
  await page.goto('./');
  await expect(page).toHaveTitle(/Undersky/);
  await expect(page.getByRole('heading').first()).toBeVisible();
});
