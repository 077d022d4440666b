import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from '@playwright/test';
import { launchBrowser } from '../support/launch.ts';
import { buildApp, serveApp } from '../support/serve-app.ts';

const FOLDER = 'screenshots';
const SIZES = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
];
const THEMES = ['light', 'dim'] as const;
const SCREENS = ['scout', 'day', 'setup', 'kit', 'call-sheet'];
/** Noon on the day of the demo. */
const NOW = '2027-05-14T12:00:00+02:00';

const README_PICTURE = 'public/picture-day.webp';

/**
 * Writes every screen of the demo in both sizes and both themes, the window and the whole page;
 * with the word readme only the README's picture.
 */
export const main = async (words: readonly string[]): Promise<void> => {
  await buildApp();
  const { url, close } = await serveApp();
  const browser = await launchBrowser();
  try {
    if (words.includes('readme')) {
      await takeForReadme(browser, url);
      return;
    }
    rmSync(FOLDER, { recursive: true, force: true });
    mkdirSync(FOLDER);
    for (const size of SIZES) {
      for (const theme of THEMES) await takeAll(browser, url, size, theme);
    }
    console.log(`Pictures are in ${FOLDER}/`);
  } finally {
    await browser.close();
    await close();
  }
};

const takeForReadme = async (browser: Browser, url: string): Promise<void> => {
  const context = await contextOf(browser, { width: 1440, height: 900 }, 'light');
  const page = await openPage(context);
  await showScreen(page, `${url}#/day`, 'light');
  writeFileSync(README_PICTURE, await asWebp(page, await page.screenshot()));
  await context.close();
  console.log(`The picture is ${README_PICTURE}`);
};

/** Two thirds of the PNG's size or less, by the browser's own encoder. */
const asWebp = async (page: Page, png: Buffer): Promise<Buffer> => {
  const address = await page.evaluate(
    async (source) => {
      const picture = new Image();
      picture.src = source;
      await picture.decode();
      const canvas = document.createElement('canvas');
      canvas.width = picture.naturalWidth;
      canvas.height = picture.naturalHeight;
      canvas.getContext('2d')?.drawImage(picture, 0, 0);
      return canvas.toDataURL('image/webp', 0.8);
    },
    `data:image/png;base64,${png.toString('base64')}`,
  );
  return Buffer.from(address.slice(address.indexOf(',') + 1), 'base64');
};

const takeAll = async (
  browser: Browser,
  url: string,
  viewport: (typeof SIZES)[number],
  theme: (typeof THEMES)[number],
): Promise<void> => {
  const context = await contextOf(browser, viewport, theme);
  const page = await openPage(context);
  for (const screen of SCREENS) {
    await showScreen(page, `${url}#/${screen}`, theme);
    const path = `${FOLDER}/${screen}-${viewport.width}-${theme}`;
    await page.screenshot({ path: `${path}.png` });
    await page.screenshot({ path: `${path}-whole.png`, fullPage: true });
  }
  await context.close();
};

const contextOf = (
  browser: Browser,
  viewport: (typeof SIZES)[number],
  theme: (typeof THEMES)[number],
): Promise<BrowserContext> =>
  browser.newContext({
    viewport,
    reducedMotion: 'reduce',
    colorScheme: theme === 'dim' ? 'dark' : 'light',
    timezoneId: 'Europe/Rome',
    locale: 'en-GB',
  });

const openPage = async (context: BrowserContext): Promise<Page> => {
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date(NOW));
  return page;
};

const showScreen = async (
  page: Page,
  address: string,
  theme: (typeof THEMES)[number],
): Promise<void> => {
  await page.goto(address);
  await page.waitForLoadState('networkidle');
  await setTheme(page, theme);
  await drawn(page);
};

const setTheme = async (page: Page, theme: (typeof THEMES)[number]): Promise<void> => {
  const shown = await page.locator('html').getAttribute('data-theme');
  if (shown !== theme) await page.locator('[data-theme-switch]').dispatchEvent('click');
  await page.locator(`html[data-theme="${theme}"]`).waitFor({ state: 'attached' });
};

/** The first figures where the screen has them, the fonts, and two frames. */
const drawn = async (page: Page): Promise<void> => {
  await page.locator('[data-first-figures="drawn"]').waitFor({ state: 'attached' });
  await page.evaluate(async () => {
    await document.fonts.ready;
    await new Promise<void>((resolve) => {
      requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
    });
  });
};
