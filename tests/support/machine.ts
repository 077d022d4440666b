import { readFileSync, realpathSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, resolve } from 'node:path';
import { chromium } from '@playwright/test';

/** What the search for a browser may look at; a test hands in a machine of its own. */
export type Machine = {
  readonly platform: string;
  readonly arch: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly pathFolders: readonly string[];
  readonly homeFolder: string;
  /** Where Playwright's own download would lie, downloaded or not. */
  readonly downloadPath: string;
  /** The packed browser of the npm package, installed or not. */
  readonly packedPath: string;
  readonly isFile: (path: string) => boolean;
  /** The path behind all links. */
  readonly realPath: (path: string) => string;
  /** The start of a file as text: enough to read a launcher script. */
  readonly startOf: (path: string) => string;
};

export const thisMachine = (): Machine => ({
  platform: process.platform,
  arch: process.arch,
  env: process.env,
  pathFolders: (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== ''),
  homeFolder: homedir(),
  downloadPath: chromium.executablePath(),
  packedPath: resolve('node_modules/@sparticuz/chromium/bin/chromium.br'),
  isFile: (path) => statSync(path, { throwIfNoEntry: false })?.isFile() ?? false,
  realPath: (path) => realpathSync(path),
  startOf: (path) => readFileSync(path).subarray(0, 4096).toString('latin1'),
});
