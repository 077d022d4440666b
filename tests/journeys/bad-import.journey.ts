import type { Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';

const BAD_FILES = [
  {
    name: 'not ours',
    text: '{"type":"FeatureCollection","features":[]}',
    says: /Expected an Undersky shoot/,
  },
  {
    name: 'cut short',
    text: '{"format":"undersky-shoot-file","version":1,"shoot":{"id":"de',
    says: /cut|ends|short/i,
  },
  {
    name: 'of a newer version',
    text: '{"format":"undersky-shoot-file","version":7}',
    says: /newer/,
  },
  {
    name: 'not JSON at all',
    text: '<html><script>alert(1)</script></html>',
    says: /JSON|Expected/,
  },
  { name: 'empty', text: '', says: /empty/ },
  {
    name: 'with a latitude off the globe',
    text: JSON.stringify({
      format: 'undersky-shoot-file',
      version: 1,
      shoot: {
        format: 'undersky-shoot',
        version: 1,
        id: 'x',
        title: 'x',
        date: '2027-02-30',
        condition: 'clear',
        spots: {},
        setups: {},
      },
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

test('a file that cannot be a shoot gets a sentence, and the open shoot stays whole', async ({
  page,
}) => {
  await openSheet(page);
  const input = page.locator('input[data-import-shoot]');
  const refused = page.locator('[data-import-refused]');
  for (const [at, { name, text, says }] of BAD_FILES.entries())
    await test.step(`a file that is ${name}`, async () => {
      const file = `shoot-${at}.json`;
      await input.setInputFiles({
        name: file,
        mimeType: 'application/json',
        buffer: Buffer.from(text),
      });
      await expect(refused).toContainText(`${file} was not imported`);
      await expect(refused).toContainText(says);
    });
  await test.step('a file of 70 MB is refused by its size', async () => {
    await input.evaluate((element: HTMLInputElement) => {
      const files = new DataTransfer();
      files.items.add(new File([new Uint8Array(70_000_000)], 'large.json'));
      element.files = files.files;
      element.dispatchEvent(new Event('change', { bubbles: true }));
    });
    await expect(refused).toContainText('large.json was not imported');
    await expect(refused).toContainText('70');
  });
  await test.step('the shoot is as it was, also after a reload', async () => {
    await page.getByRole('button', { name: 'Close' }).click();
    await expect(page.locator('[data-figure="spot-name"]').first()).toHaveText('Pier head');
    await page.reload();
    await expect(page.locator('[data-figure="spot-name"]').first()).toHaveText('Pier head');
    await page.locator('[data-open-shoot-sheet]').click();
    await expect(page.locator('.shoot-list li')).toHaveCount(1);
  });
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
