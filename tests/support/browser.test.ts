import { describe, expect, test } from 'vitest';
import { findBrowser } from './browser.ts';
import type { Machine } from './machine.ts';

type Disk = Readonly<Record<string, { readonly linkTo?: string; readonly start?: string }>>;

const machine = (disk: Disk, over: Partial<Machine> = {}): Machine => ({
  platform: 'linux',
  arch: 'x64',
  env: {},
  pathFolders: ['/usr/local/bin', '/usr/bin'],
  homeFolder: '/home/ann',
  downloadPath: '/cache/chrome',
  packedPath: '/app/pack/chromium.br',
  isFile: (path) => path in disk,
  realPath: (path) => disk[path]?.linkTo ?? path,
  startOf: (path) => disk[path]?.start ?? '\u007fELF',
  ...over,
});

const EVERYTHING: Disk = {
  '/opt/mine': {},
  '/cache/chrome': {},
  '/usr/bin/chromium': { start: '#!/bin/sh\n# launcher' },
  '/app/pack/chromium.br': {},
};

const without = (...paths: readonly string[]): Disk =>
  Object.fromEntries(Object.entries(EVERYTHING).filter(([path]) => !paths.includes(path)));

describe('the browser is looked for in a fixed order', () => {
  test('TEST_BROWSER comes first', () => {
    expect(findBrowser(machine(EVERYTHING, { env: { TEST_BROWSER: '/opt/mine' } }))).toEqual({
      ok: true,
      value: { executablePath: '/opt/mine', from: 'TEST_BROWSER' },
    });
  });
  test('a TEST_BROWSER that is no file is an error that says what was found, whatever else is there', () => {
    expect(findBrowser(machine(EVERYTHING, { env: { TEST_BROWSER: '/opt/gone' } }))).toEqual({
      ok: false,
      problem: { kind: 'wrong-setting', message: expect.stringContaining('"/opt/gone"') },
    });
  });
  test('an empty TEST_BROWSER says nothing', () => {
    expect(findBrowser(machine(EVERYTHING, { env: { TEST_BROWSER: '' } }))).toMatchObject({
      value: { from: 'Playwright download' },
    });
  });
  test('then Playwright’s own download', () => {
    expect(findBrowser(machine(EVERYTHING))).toEqual({
      ok: true,
      value: { executablePath: '/cache/chrome', from: 'Playwright download' },
    });
  });
  test('then the system’s, a launcher script too', () => {
    expect(findBrowser(machine(without('/cache/chrome')))).toEqual({
      ok: true,
      value: { executablePath: '/usr/bin/chromium', from: 'system' },
    });
  });
  test('then the npm package’s, still to be unpacked', () => {
    expect(findBrowser(machine(without('/cache/chrome', '/usr/bin/chromium')))).toEqual({
      ok: true,
      value: {
        executablePath: '/app/pack/chromium',
        from: 'npm package',
        packedPath: '/app/pack/chromium.br',
      },
    });
  });
  test('the npm package’s is for Linux on x64 only', () => {
    expect(findBrowser(machine({ '/app/pack/chromium.br': {} }, { arch: 'arm64' }))).toMatchObject({
      ok: false,
    });
  });
  test('where there is none, four remedies are named', () => {
    const found = findBrowser(machine({}));
    if (found.ok) throw new Error('expected no browser');
    expect(found.problem.kind).toBe('none');
    for (const remedy of [
      'apt-get install chromium',
      'playwright install chromium',
      '@sparticuz/chromium',
      'TEST_BROWSER',
    ]) {
      expect(found.problem.message).toContain(remedy);
    }
  });
});

describe('a snap package is passed over', () => {
  test.each<[string, Disk]>([
    ['as a link into snap', { '/usr/bin/chromium': { linkTo: '/snap/chromium/1/chrome' } }],
    ['as a link to the snap command', { '/usr/bin/chromium': { linkTo: '/usr/bin/snap' } }],
    [
      'as a script that starts one',
      { '/usr/bin/chromium-browser': { start: '#!/bin/sh\nexec /snap/bin/chromium "$@"' } },
    ],
  ])('%s', (_how, disk) => {
    expect(findBrowser(machine(disk))).toMatchObject({ ok: false, problem: { kind: 'none' } });
  });
  test('for the next one that is none', () => {
    const disk = {
      '/usr/bin/chromium': { linkTo: '/snap/chromium/1/chrome' },
      '/usr/bin/google-chrome': { linkTo: '/opt/google/chrome/google-chrome' },
    };
    expect(findBrowser(machine(disk))).toMatchObject({
      value: { executablePath: '/usr/bin/google-chrome' },
    });
  });
});

describe('other systems keep their browsers elsewhere', () => {
  test('macOS in the applications of the machine or of the user', () => {
    const path = '/home/ann/Applications/Chromium.app/Contents/MacOS/Chromium';
    expect(findBrowser(machine({ [path]: {} }, { platform: 'darwin' }))).toMatchObject({
      value: { executablePath: path, from: 'system' },
    });
  });
  test('Windows in its program folders', () => {
    const path = 'C:\\Programs\\Microsoft\\Edge\\Application\\msedge.exe';
    const env = { 'PROGRAMFILES(X86)': 'C:\\Programs' };
    expect(findBrowser(machine({ [path]: {} }, { platform: 'win32', env }))).toMatchObject({
      value: { executablePath: path, from: 'system' },
    });
  });
});
