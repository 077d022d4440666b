import type { Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';

const BAD_FILES = [
  { name: 'not ours', text: '{"type":"FeatureCollection","features":[]}', says: /Expected an Undersky shoot/ },
  { name: 'cut short', text: '{"format":"undersky-shoot-file","version":1,"shoot":{"id":"de', says: /cut|ends|short/i },
  { name: 'of a newer version', text: '{"format":"undersky-shoot-file","version":7}', says: /newer/ },
  { name: 'not JSON at all', text: '<html><script>alert(1)</script></html>', says: /JSON|Expected/ },
  { name: 'empty', text: '', says: /empty/ },
  {
    name: 'with a latitude off the globe',
    text: JSON.stringify({
      format: 'undersky-shoot-file',
      version: 1,
      shoot: { format: 'undersky-shoot', version: 1, id: 'x', title: 'x', date: '2027-02-30', condition: 'clear', spots: {}, setups: {} },
      kit: {},
    }),
    says: /2027-02-30/,
  },
] as const;

const openSheet = async (page: Page): Promise<void> => {
  await page.goto('./');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await page.locator('[data-open-shoot-sheet]').click();
};

for (const { name, text, says } of BAD_FILES)
  test(`a file that is ${name} gets a sentence and the shoot stays whole`, async ({ page }) => {
    await openSheet(page);
    await page
      .locator('input[data-import-shoot]')
      .setInputFiles({ name: 'shoot.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await expect(page.locator('[data-import-refused]')).toContainText(says);
    await page.getByRole('button', { name: 'Close' }).click();
    await expect(page.locator('[data-figure="spot-name"]').first()).toHaveText('Pier head');
    await page.reload();
    await expect(page.locator('[data-figure="spot-name"]').first()).toHaveText('Pier head');
  });

test('a file of 50 MB is refused by its size', async ({ page }) => {
  await openSheet(page);
  await page.locator('input[data-import-shoot]').evaluate((input: HTMLInputElement) => {
    const files = new DataTransfer();
    files.items.add(new File([new Uint8Array(50_000_000)], 'large.json'));
    input.files = files.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await expect(page.locator('[data-import-refused]')).toContainText('50');
});

test('a shoot saved as a file comes back as it was, as a copy beside it', async ({ page }) => {
  await openSheet(page);
  const saved = page.waitForEvent('download');
  await page.locator('[data-export-shoot]').click();
  const path = await (await saved).path();
  await page.locator('input[data-import-shoot]').setInputFiles(path);
  await expect(page.locator('[data-import-plan]')).toContainText('Quartet album cover');
  await page.locator('[data-import-take]').click();
  await expect(page.locator('output.said')).toContainText('Imported Quartet album cover');
  await expect(page.locator('[data-figure="spot-name"]').first()).toHaveText('Pier head');
});

test('markup in a name stays text', async ({ page }) => {
  await page.goto('./');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await page.getByText('Place and name').click();
  const name = page.locator('[data-field="spot-name"]').first();
  await name.fill('<img src=x onerror=alert(1)><b>Pier</b>');
  await name.press('Enter');
  await expect(page.locator('[data-figure="spot-name"]').first()).toContainText('<b>Pier</b>');
  await expect(page.locator('img[src="x"]')).toHaveCount(0);
});
