import { chmodSync, existsSync, renameSync, readFileSync, writeFileSync } from 'node:fs';
import { brotliDecompressSync } from 'node:zlib';
import { chromium, type Browser } from '@playwright/test';
import { findBrowser, type FoundBrowser } from './browser.ts';

/** Keeps the browser from calling home. */
const QUIET = [
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export type LaunchOptions = { readonly executablePath: string; readonly args: string[] };

export const launchOptions = (found: FoundBrowser): LaunchOptions => {
  if (found.packedPath !== undefined && !existsSync(found.executablePath)) {
    unpack(found.packedPath, found.executablePath);
  }
  return { executablePath: found.executablePath, args: QUIET };
};

/** Renamed at the end, so that no other process meets half a browser. */
const unpack = (packedPath: string, executablePath: string): void => {
  const partPath = `${executablePath}.${process.pid}`;
  writeFileSync(partPath, brotliDecompressSync(readFileSync(packedPath)));
  chmodSync(partPath, 0o755);
  renameSync(partPath, executablePath);
};

/** Throws the sentence that names the remedies where there is no browser. */
export const launchBrowser = async (): Promise<Browser> => {
  const found = findBrowser();
  if (!found.ok) throw new Error(found.problem.message);
  return chromium.launch(launchOptions(found.value));
};
