import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const SIZES = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
];
const THEMES = ['light', 'dim'] as const;

/** Each screen with what shows that it is drawn. */
const SCREENS = {
  scout: '[data-figure="last-usable"]',
  day: '[data-figure="day-in-hand"]',
  setup: '[data-figure="in-hand"], [data-figure="problem"]',
  kit: '[data-figure="meter-reflector"]',
  'call-sheet': '[data-sheet-setup]',
} as const;

const violations = async (page: Page): Promise<readonly string[]> => {
  const { violations: found } = await new AxeBuilder({ page }).withTags(RULES).analyze();
  return found.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary = '' }) => `${id}: ${target.join(' ')}: ${failureSummary.split('\n')[1]?.trim() ?? ''}`));
};

const setTheme = async (page: Page, theme: (typeof THEMES)[number]): Promise<void> => {
  const shown = await page.locator('html').getAttribute('data-theme');
  if (shown !== theme) await page.locator('[data-theme-switch]').click();
  await expect(page.locator('html')).toHaveAttribute('data-theme', theme);
};

for (const size of SIZES)
  test(`no screen breaks a rule of accessibility at ${size.width} × ${size.height}, in either theme`, async ({ page }) => {
    await page.setViewportSize(size);
    const found: string[] = [];
    for (const [screen, drawn] of Object.entries(SCREENS)) {
      await page.goto(`./#/${screen}`);
      await expect(page.locator(drawn).first()).toBeVisible();
      for (const theme of THEMES)
        await test.step(`${screen}, ${theme}`, async () => {
          await setTheme(page, theme);
          found.push(...(await violations(page)).map((one) => `${screen} ${theme}: ${one}`));
        });
    }
    expect(found).toEqual([]);
  });
