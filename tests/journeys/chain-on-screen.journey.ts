import type { Page } from '@playwright/test';

import { expectedMinutes } from '../support/by-hand/expected-minutes.ts';
import { expect, test } from './support/app-page.ts';
import { figure, figureNumber, figureText } from './support/figure.ts';

/** What the screens call the figures worked out by hand. */
const ON_SETUP = {
  'dark-ev': 'darkEv',
  'patch-ev': 'patchEv',
  'mean-ev': 'meanEv',
  'bright-ev': 'brightEv',
  'ambient-ev': 'ambientEv',
  'ambient-out-ev': 'ambientSunOutEv',
  'incident-ev': 'incidentEv',
  'in-hand': 'inHand',
} as const;

/** A figure is shown to a tenth. */
const HALF_A_TENTH = 0.05;
/** A bearing is shown to a degree. */
const HALF_A_DEGREE = 0.5;

const MINUTE_MS = 60_000;

const clockOf = (instantMs: number): string =>
  new Intl.DateTimeFormat('en-GB', {
    hour: '2-digit',
    minute: '2-digit',
    timeZone: 'Europe/Rome',
  }).format(instantMs);

const goToMinute = async (page: Page, fromMs: number, toMs: number): Promise<void> => {
  const minute = page.locator('[data-field="minute"]');
  const minutes = Math.round((toMs - fromMs) / MINUTE_MS);
  for (let step = 0; step < Math.floor(minutes / 10); step += 1)
    await minute.press('Shift+ArrowDown');
  for (let step = 0; step < minutes % 10; step += 1) await minute.press('ArrowDown');
  await expect(figure(page, 'minute')).toHaveText(clockOf(toMs));
};

const numbersIn = (text: string): readonly number[] =>
  (text.replaceAll('−', '-').match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

const near = (
  what: string,
  shown: number | undefined,
  expected: { readonly value: number; readonly tolerance: number },
): void => {
  expect(
    Math.abs((shown ?? Number.NaN) - expected.value),
    `${what}: on screen ${shown}, by hand ${expected.value.toFixed(2)} ± ${expected.tolerance.toFixed(2)}`,
  ).toBeLessThanOrEqual(expected.tolerance);
};

type Expected = { readonly value: number; readonly tolerance: number };

const expectedOf =
  (figures: Readonly<Record<string, Expected>>) =>
  (name: string, rounding: number): Expected => {
    const expected = figures[name];
    if (expected === undefined) throw new Error(`nothing is worked out for ${name}`);
    return { value: expected.value, tolerance: expected.tolerance + rounding + 1e-9 };
  };

test('two minutes of the demo read on screen as they are worked out by hand', async ({ page }) => {
  const minutes = expectedMinutes();
  await page.goto('./#/setup');
  for (const { setupId, instantMs, figures, minute } of minutes)
    await test.step(clockOf(instantMs), async () => {
      const by = expectedOf(figures);
      await page.evaluate(() => {
        window.location.hash = '#/setup';
      });
      // Choosing a setup goes to its start.
      await page.locator('[data-field="setup"]').selectOption('viola');
      await expect(figure(page, 'setup-name')).toHaveText('Viola, under the arch');
      await page.locator('[data-field="setup"]').selectOption(setupId);
      await expect(figure(page, 'minute')).toHaveText(clockOf(minutes[0].instantMs));
      await goToMinute(page, minutes[0].instantMs, instantMs);
      await expect(figure(page, 'ambient-ev')).toHaveText(/^EV/);

      let read = 0;
      for (const [name, worked] of Object.entries(ON_SETUP)) {
        const text = await figureText(page, name);
        // With the sun down there is one ambient, not two; a setup that does not work has nothing in hand.
        if (text === '') {
          expect(name, `${name} is on the screen`).toMatch(
            minute.sun.trueAltitude < 0 ? /^ambient-out-ev$|^in-hand$/ : /^in-hand$/,
          );
          continue;
        }
        near(name, figureNumber(text), by(worked, HALF_A_TENTH));
        read += 1;
      }
      expect(read, 'figures compared').toBeGreaterThanOrEqual(6);
      const [patch, frame, incident] = numbersIn(await figureText(page, 'hold'));
      near('held under the patch', patch, by('holdUnderPatch', HALF_A_TENTH));
      near('held under the frame', frame, by('holdUnderFrame', HALF_A_TENTH));
      near('held under incident', incident, by('holdUnderIncident', HALF_A_TENTH));

      await page.getByRole('link', { name: 'Scout', exact: true }).first().click();
      await expect(figure(page, 'sun-now')).toBeVisible();
      await expect(figure(page, 'minute')).toHaveText(clockOf(instantMs));
      const sun = await figureText(page, 'sun-now');
      const [upDeg = Number.NaN, azimuthDeg] = numbersIn(sun);
      near(
        'the sun’s height',
        sun.includes('down') ? -upDeg : upDeg,
        by('sunApparentAltitude', HALF_A_TENTH),
      );
      near('the sun’s azimuth', azimuthDeg, by('sunAzimuth', HALF_A_DEGREE));
      near(
        'the spread of the patch',
        numbersIn(await figureText(page, 'patch-ev'))[1],
        by('patchSpread', HALF_A_TENTH),
      );
      near(
        'the spread of the frame',
        numbersIn(await figureText(page, 'mean-ev'))[1],
        by('frameSpread', HALF_A_TENTH),
      );
    });
});
