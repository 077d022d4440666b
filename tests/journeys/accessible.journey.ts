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

/**
 * The rule on the size of targets excepts what must lie where it lies: a spot's pin among its
 * neighbours. The same spots are in the list above the map.
 */
const violations = async (page: Page, axe: AxeBuilder): Promise<readonly string[]> => {
  const { violations: found, passes } = await axe.analyze();
  expect(passes.length, 'rules that had something to look at').toBeGreaterThan(0);
  const pins = await page
    .locator('.leaflet-container [aria-label]')
    .evaluateAll((all) => all.map((pin) => pin.getAttribute('aria-label')));
  return found.flatMap(({ id, nodes }) =>
    nodes
      .filter(
        ({ target }) =>
          !(id === 'target-size' && pins.some((pin) => target.join(' ').includes(`"${pin}"`))),
      )
      .map(
        ({ target, failureSummary = '' }) =>
          `${id}: ${target.join(' ')}: ${failureSummary.split('\n')[1]?.trim() ?? ''}`,
      ),
  );
};

const setTheme = async (page: Page, theme: (typeof THEMES)[number]): Promise<void> => {
  const shown = await page.locator('html').getAttribute('data-theme');
  if (shown !== theme) await page.locator('[data-theme-switch]').click();
  await expect(page.locator('html')).toHaveAttribute('data-theme', theme);
};

/** In the dim theme only colours differ. */
const axeOf = (page: Page, theme: (typeof THEMES)[number]): AxeBuilder =>
  theme === 'light'
    ? new AxeBuilder({ page }).withTags(RULES)
    : new AxeBuilder({ page }).withRules(['color-contrast']);

for (const size of SIZES)
  test(`no screen breaks a rule of accessibility at ${size.width} × ${size.height}, in either theme`, async ({
    page,
  }) => {
    await page.setViewportSize(size);
    const found: string[] = [];
    const look = async (screen: string): Promise<void> => {
      for (const theme of THEMES)
        await test.step(`${screen}, ${theme}`, async () => {
          await setTheme(page, theme);
          found.push(
            ...(await violations(page, axeOf(page, theme))).map(
              (one) => `${screen} ${theme}: ${one}`,
            ),
          );
        });
    };
    for (const [screen, drawn] of Object.entries(SCREENS)) {
      await page.goto(`./#/${screen}`);
      await expect(page.locator(drawn).first()).toBeVisible();
      await look(screen);
    }
    await page.locator('[data-open-shoot-sheet]').click();
    await expect(page.locator('[data-field="title"]')).toBeVisible();
    found.push(...(await violations(page, axeOf(page, 'light'))));
    expect(found).toEqual([]);
  });
