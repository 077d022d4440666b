import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Bench, Figure } from './bench.ts';
import { withAppInBrowser, type AppInBrowser } from './app-in-browser.ts';

const PAGE_KB = 250;
const WORKER_KB = 80;

type Script = { readonly url: string; readonly askedBy: string };

const measure = async ({ context, page, url }: AppInBrowser): Promise<readonly Figure[]> => {
  const scripts: Script[] = [];
  const workerUrls = new Set<string>();
  page.on('worker', (worker) => workerUrls.add(worker.url()));
  context.on('serviceworker', (worker) => workerUrls.add(worker.url()));
  context.on('response', (response) => {
    if (!/javascript/.test(response.headers()['content-type'] ?? '')) return;
    const askedBy = response.request().headers()['referer'] ?? '';
    scripts.push({ url: response.url(), askedBy });
  });
  await page.goto(url);
  await page.waitForSelector('[data-first-figures="drawn"]', { state: 'attached' });
  const { page: pageUrls, worker } = split(scripts, workerUrls);
  return [
    sizeFigure('script of the page until the first figures', pageUrls, url, PAGE_KB),
    sizeFigure('script of the workers', worker, url, WORKER_KB),
  ];
};

/** A script is a worker's if it is the worker or if a script of a worker asked for it. */
const split = (
  scripts: readonly Script[],
  workerUrls: ReadonlySet<string>,
): { readonly page: ReadonlySet<string>; readonly worker: ReadonlySet<string> } => {
  const worker = new Set(workerUrls);
  const page = new Set<string>();
  for (const { url, askedBy } of scripts) (worker.has(askedBy) ? worker : page).add(url);
  for (const url of workerUrls) page.delete(url);
  return { page, worker };
};

const sizeFigure = (
  figure: string,
  urls: ReadonlySet<string>,
  appUrl: string,
  target: number,
): Figure => {
  if (urls.size === 0) throw new Error(`Nothing was seen to be fetched as ${figure}.`);
  const bytes = [...urls].map((url) => {
    if (!url.startsWith(appUrl)) throw new Error(`A script came from elsewhere: ${url}`);
    return gzipSync(readFileSync(join('dist', new URL(url).pathname))).byteLength;
  });
  const value = bytes.reduce((sum, each) => sum + each, 0) / 1000;
  const files = urls.size === 1 ? '1 file' : `${urls.size} files`;
  return { figure: `${figure} (${files})`, value, unit: 'KB gzip', target, ok: value < target };
};

export const benches: readonly Bench[] = [
  { name: 'First load from an empty cache', run: () => withAppInBrowser(measure) },
];
