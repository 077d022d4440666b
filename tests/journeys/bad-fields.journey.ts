import type { Locator, Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';
import { openAll } from './support/control.ts';
import { figureTexts } from './support/figure.ts';

type BadText = {
  readonly field: string;
  readonly text: string;
  readonly found: RegExp;
  readonly expected: RegExp;
};

// prettier-ignore
const SCOUT: readonly BadText[] = [
  { field: 'coordinates', text: '95.2, 13.76', found: /found .*95\.2/, expected: /expected .*90/ },
  { field: 'coordinates', text: '45.65, 213.7', found: /found .*213\.7/, expected: /expected .*180/ },
  { field: 'coordinates', text: 'NaN, NaN', found: /found .*NaN/, expected: /expected/ },
  { field: 'coordinates', text: '', found: /found nothing/, expected: /expected/ },
  { field: 'bearing', text: 'NaN', found: /found ‘NaN’/, expected: /expected a number from −360 to 360/ },
  { field: 'bearing', text: '', found: /found nothing/, expected: /expected a number from −360 to 360/ },
  { field: 'tilt', text: '91', found: /found ‘91’/, expected: /expected a number from −89 to 89/ },
  { field: 'focal-length', text: '0', found: /found ‘0’/, expected: /expected a number from 4 to 2000/ },
  { field: 'camera-distance', text: '0', found: /found ‘0’/, expected: /expected a number from 0.3 to 500/ },
  { field: 'ground-reflectance', text: '1.5', found: /found ‘1.5’/, expected: /expected a number from 0 to 0.95/ },
  { field: 'skyline-altitude', text: '1e9', found: /found ‘1e9’/, expected: /expected a number from −10 to 89/ },
];

// prettier-ignore
const SETUP: readonly BadText[] = [
  { field: 'distance-key', text: '0', found: /found ‘0’/, expected: /expected a number from 0.2 to 30/ },
  { field: 'wish-aperture', text: '0', found: /found ‘0’/, expected: /expected a number from 0.7 to 64/ },
  { field: 'start-clock', text: '25:00', found: /found ‘25:00’/, expected: /expected a clock time/ },
  { field: 'hold-stops', text: 'two', found: /found ‘two’/, expected: /expected a number from −3 to 10/ },
  { field: 'head-count-key', text: '0', found: /found ‘0’/, expected: /expected a number from 1 to 20/ },
  { field: 'people', text: '', found: /found nothing/, expected: /expected a number from 1 to 20/ },
  { field: 'duration', text: '−10', found: /found ‘−10’/, expected: /expected a number from 5 to 720/ },
];

// prettier-ignore
const HEADS: readonly BadText[] = [
  { field: 'guide-number', text: '0', found: /found ‘0’/, expected: /expected a number from 0.1 to 400/ },
  { field: 'reading-f-number', text: '0', found: /found ‘0’/, expected: /expected a number from 0.7 to 256/ },
  { field: 'reading-distance', text: '0', found: /found ‘0’/, expected: /expected a number from 0.2 to 30/ },
  { field: 'energy', text: 'Infinity', found: /found ‘Infinity’/, expected: /expected a number from 1 to 10000/ },
];

// prettier-ignore
const CAMERAS: readonly BadText[] = [
  { field: 'sync-shutter', text: '0', found: /found ‘0’/, expected: /expected a shutter from 1\/4000 to 1\/30/ },
  { field: 'sync-shutter', text: '1/0', found: /found ‘1\/0’/, expected: /expected a shutter from 1\/4000 to 1\/30/ },
];

const LENSES: readonly BadText[] = [
  {
    field: 'min-f-number',
    text: '0',
    found: /found ‘0’/,
    expected: /expected a number from 0.7 to 22/,
  },
];

const fieldOf = (page: Page, name: string): Locator =>
  page.locator(`[data-field="${name}"]`).first();

/** Every figure of the screen. */
const allFigures = async (page: Page): Promise<Record<string, string>> => {
  const names = await page
    .locator('[data-figure]')
    .evaluateAll((figures) => figures.map((one) => one.getAttribute('data-figure') ?? ''));
  return figureTexts(page, names);
};

/** The sentence that describes the field, as a screen reader finds it. */
const faultOf = async (input: Locator): Promise<string> => {
  await expect(input).toHaveAttribute('aria-invalid', 'true');
  const id = await input.getAttribute('aria-describedby');
  return (await input.page().locator(`[id="${id}"]`).textContent()) ?? '';
};

const refuseAll = async (page: Page, bad: readonly BadText[]): Promise<void> => {
  const before = await allFigures(page);
  expect(Object.keys(before).length, 'figures on the screen').toBeGreaterThan(0);
  for (const { field, text, found, expected } of bad)
    await test.step(`${field}: ‘${text}’`, async () => {
      const input = fieldOf(page, field);
      const value = await input.inputValue();
      await input.fill(text);
      await input.press('Enter');
      const fault = await faultOf(input);
      expect(fault).toMatch(found);
      expect(fault).toMatch(expected);
      expect(await allFigures(page)).toEqual(before);
      await input.press('Escape');
      await expect(input).toHaveValue(value);
      await expect(input).toHaveAttribute('aria-invalid', 'false');
    });
  await page.locator('[data-undo]').click();
  await expect(page.locator('output.said')).toHaveText('Nothing of this tab is left to undo');
};

test('what cannot be is named beside its field with what was found and expected, and nothing changes', async ({
  page,
}) => {
  await page.goto('./#/scout');
  await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
  await openAll(page);
  // Fetched after the first figures.
  await expect(page.locator('[data-figure="compass-bearing"]')).toBeVisible();
  const scoutBefore = await allFigures(page);
  await refuseAll(page, SCOUT);

  await test.step('a spot is not put off the globe', async () => {
    await page.locator('[data-add-spot]').click();
    await fieldOf(page, 'new-coordinates').fill('−91 0');
    await page.locator('[data-place-coordinates]').click();
    const fault = await faultOf(fieldOf(page, 'new-coordinates'));
    expect(fault).toMatch(/found .*91.*expected .*90/);
    await page.locator('[data-cancel-add]').click();
    await expect(fieldOf(page, 'spot').locator('option')).toHaveCount(4);
  });

  await test.step('a date that does not exist', async () => {
    await page.locator('[data-open-shoot-sheet]').click();
    const date = fieldOf(page, 'date');
    await date.fill('2027-02-30');
    await date.press('Enter');
    expect(await faultOf(date)).toBe(
      'found ‘2027-02-30’, expected a date that exists, as 2027-05-14',
    );
    await page.getByRole('button', { name: 'Close' }).click();
    await expect(page.locator('[data-open-shoot-sheet]')).toContainText('14 May 2027');
  });

  await test.step('Setup', async () => {
    await page.goto('./#/setup');
    await fieldOf(page, 'setup').selectOption('quartet');
    await expect(page.locator('[data-figure="setup-name"]')).toHaveText('Four on the pier head');
    // Looked for when everything else stands.
    await expect(page.locator('[data-figure="next-change"]')).toBeVisible();
    await openAll(page);
    await refuseAll(page, SETUP);
  });

  await test.step('Kit', async () => {
    await page.goto('./#/kit');
    for (const [shelf, bad] of Object.entries({ heads: HEADS })) {
      await page.locator(`[data-shelf="${shelf}"]`).click();
      await refuseAll(page, bad);
    }
    for (const [shelf, bad] of Object.entries({ cameras: CAMERAS, lenses: LENSES })) {
      await page.locator(`[data-shelf="${shelf}"]`).click();
      for (const { field, text, found, expected } of bad) {
        const input = fieldOf(page, field);
        const value = await input.inputValue();
        await input.fill(text);
        await input.press('Enter');
        const fault = await faultOf(input);
        expect(fault).toMatch(found);
        expect(fault).toMatch(expected);
        await input.press('Escape');
        await expect(input).toHaveValue(value);
      }
    }
  });

  await test.step('after a reload all is as it was', async () => {
    await page.goto('./#/scout');
    await page.reload();
    await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
    await openAll(page);
    await expect.poll(() => allFigures(page)).toEqual(scoutBefore);
  });
});
