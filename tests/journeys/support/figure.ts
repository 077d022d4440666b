import type { Locator, Page } from '@playwright/test';

/** A figure or a note by its name. */
export const figure = (page: Page, name: string): Locator =>
  page.locator(`[data-figure="${name}"], [data-note="${name}"]`).first();

/** What a figure says; '' where it is not shown. */
export const figureText = (page: Page, name: string): Promise<string> =>
  page.evaluate(
    (wanted) =>
      document
        .querySelector(`[data-figure="${wanted}"], [data-note="${wanted}"]`)
        ?.textContent?.trim() ?? '',
    name,
  );

export const figureTexts = (
  page: Page,
  names: readonly string[],
): Promise<Record<string, string>> =>
  page.evaluate(
    (wanted) =>
      Object.fromEntries(
        wanted.map((name) => [
          name,
          document
            .querySelector(`[data-figure="${name}"], [data-note="${name}"]`)
            ?.textContent?.trim() ?? '',
        ]),
      ),
    [...names],
  );

/**
 * The number of a figure: minutes of a clock, stops of an aperture, a shutter or a power (more is
 * more light, an aperture's more is less), stops in hand with a shortage below 0, else the first
 * number. NaN where there is none.
 */
export function figureNumber(text: string): number {
  const plain = text.replaceAll('−', '-');
  const clock = /^(\d\d):(\d\d)/.exec(plain);
  if (clock !== null) return Number(clock[1]) * 60 + Number(clock[2]);
  const lacking = /short by ([\d.]+)|([\d.]+) too much/i.exec(plain);
  if (lacking !== null) return -Number(lacking[1] ?? lacking[2]);
  const aperture = /f\/([\d.]+)(?: \+ ([\d.]+))?/.exec(plain);
  if (aperture !== null)
    return thirds(2 * Math.log2(Number(aperture[1]))) + Number(aperture[2] ?? 0);
  const fraction = /^1\/([\d.]+)(?: \+ ([\d.]+))?/.exec(plain);
  if (fraction !== null) return -Math.log2(Number(fraction[1])) + Number(fraction[2] ?? 0);
  return Number(/-?\d+(\.\d+)?/.exec(plain)?.[0] ?? Number.NaN);
}

/** Names on a lens are rounded: f/11 is 11.3. */
const thirds = (stops: number): number => Math.round(3 * stops) / 3;
