import { openInBrowser } from './open-in-browser.ts';
import { buildApp, serveApp } from './serve-app.ts';

/** Fixed, because the browser keeps what is saved per address. */
const USUAL_PORT = 4870;

export const main = async (): Promise<void> => {
  await buildApp();
  const { url } = await serveApp(USUAL_PORT);
  console.log(`Undersky is at ${url} (Ctrl+C ends it)`);
  if (!(await openInBrowser(url))) {
    console.log('No browser opened by itself here: open the address in one.');
  }
};
