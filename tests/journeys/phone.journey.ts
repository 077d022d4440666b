import type { Page } from '@playwright/test';

import { expect, test } from './support/app-page.ts';
import { openAll } from './support/control.ts';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const LEAST_TARGET_PX = 44;

const SCREENS = {
  scout: '[data-figure="last-usable"]',
  day: '[data-figure="day-in-hand"]',
  setup: '[data-figure="in-hand"], [data-figure="problem"]',
  kit: '[data-figure="meter-reflector"]',
  'call-sheet': '[data-sheet-setup]',
} as const;

/** May be lower than a finger: each with its reason. */
const EXCEPTIONS = [
  // As high as the setup is long; a tap anywhere on the column's head opens it too.
  '[data-block]',
  // A link inside a sentence.
  'p a',
] as const;

const INTERACTIVE =
  'a[href], button, select, input, textarea, summary, [role="button"], [role="slider"], [tabindex="0"]';

/** Interactive things that show and are lower than a finger; a control in a label is as high as the label. */
const tooLow = (page: Page): Promise<readonly string[]> =>
  page.evaluate(
    ({ least, interactive, exceptions }) =>
      [...document.querySelectorAll<HTMLElement>(interactive)]
        .filter((element) => element.checkVisibility() && !element.matches(exceptions.join(', ')))
        .map((element) => {
          const target = element.matches('input') ? (element.closest('label') ?? element) : element;
          const { width, height } = target.getBoundingClientRect();
          const name = `${element.localName} ${element.getAttribute('aria-label') ?? element.dataset['field'] ?? element.textContent?.trim().slice(0, 30) ?? ''}`;
          return { name, width, height };
        })
        .filter(({ width, height }) => width > 0 && height > 0 && height < least - 0.5)
        .map(({ name, height }) => `${name}: ${height.toFixed(0)} px`),
    { least: LEAST_TARGET_PX, interactive: INTERACTIVE, exceptions: [...EXCEPTIONS] },
  );

test('on a phone every screen is one column with targets for a finger, and Set this comes first', async ({
  page,
}) => {
  const low: string[] = [];
  for (const [screen, drawn] of Object.entries(SCREENS))
    await test.step(screen, async () => {
      await page.goto(`./#/${screen}`);
      await expect(page.locator(drawn).first()).toBeVisible();
      await openAll(page);
      const widths = await page.evaluate(() => ({
        content: document.documentElement.scrollWidth,
        window: document.documentElement.clientWidth,
      }));
      expect(widths.content, `${screen} scrolls sideways`).toBe(widths.window);
      expect(await page.locator(INTERACTIVE).count(), `targets of ${screen}`).toBeGreaterThan(7);
      low.push(...(await tooLow(page)).map((one) => `${screen}: ${one}`));
    });
  expect(low).toEqual([]);

  await test.step('Set this is the first section of Setup', async () => {
    await page.goto('./#/setup');
    await expect(page.locator('[data-first-figures="drawn"]')).toBeVisible();
    const tops = await page.locator('.setup-screen > section').evaluateAll((sections) =>
      sections.map((section) => ({
        label: section.getAttribute('aria-label'),
        top: section.getBoundingClientRect().top,
      })),
    );
    const first = tops.toSorted((one, other) => one.top - other.top)[0];
    expect(first?.label).toBe('Set this');
    expect(first?.top).toBeLessThan(844 / 2);
  });
});
