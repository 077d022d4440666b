import { posix, win32 } from 'node:path';
import { fail, ok, type Result } from '../../src/core/units/result.ts';
import { thisMachine, type Machine } from './machine.ts';

export type FoundBrowser = {
  readonly executablePath: string;
  readonly from: 'TEST_BROWSER' | 'Playwright download' | 'system' | 'npm package';
  /** The executable still has to be unpacked from here. */
  readonly packedPath?: string;
};

export type BrowserProblem = {
  /** A wrong TEST_BROWSER is a mistake, a machine without a browser is not. */
  readonly kind: 'wrong-setting' | 'none';
  readonly message: string;
};

const REMEDIES = [
  'No Chromium-type browser was found on this machine. Any one of these helps:',
  '  - install one with the system (Debian, Ubuntu as root: apt-get install chromium)',
  '  - npx playwright install chromium',
  '  - npm install --no-save @sparticuz/chromium@147   (Linux on x64 only)',
  '  - set TEST_BROWSER to the full path of a browser that is there',
].join('\n');

const PROGRAM_NAMES = [
  'chromium',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
  'chromium-browser',
];

const MAC_APPLICATIONS = ['Google Chrome', 'Chromium', 'Microsoft Edge'];

const WINDOWS_PROGRAMS = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/**
 * The browser for tests, benches and pictures, in this order: TEST_BROWSER, Playwright's own
 * download, the system's, the npm package's.
 */
export const findBrowser = (
  machine: Machine = thisMachine(),
): Result<FoundBrowser, BrowserProblem> => {
  const setting = machine.env['TEST_BROWSER'];
  if (setting !== undefined && setting !== '') {
    return machine.isFile(setting)
      ? ok({ executablePath: setting, from: 'TEST_BROWSER' })
      : fail({
          kind: 'wrong-setting',
          message: `TEST_BROWSER: expected the path of a browser, found ${JSON.stringify(setting)}, which is no file.`,
        });
  }
  if (machine.isFile(machine.downloadPath)) {
    return ok({ executablePath: machine.downloadPath, from: 'Playwright download' });
  }
  const systemPath = systemPaths(machine).find(
    (path) => machine.isFile(path) && !isSnap(machine, path),
  );
  if (systemPath !== undefined) return ok({ executablePath: systemPath, from: 'system' });
  if (
    machine.platform === 'linux' &&
    machine.arch === 'x64' &&
    machine.isFile(machine.packedPath)
  ) {
    return ok({
      executablePath: posix.join(posix.dirname(machine.packedPath), 'chromium'),
      from: 'npm package',
      packedPath: machine.packedPath,
    });
  }
  return fail({ kind: 'none', message: REMEDIES });
};

const systemPaths = (machine: Machine): readonly string[] => {
  if (machine.platform === 'win32') {
    return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
      const folder = machine.env[name];
      return folder === undefined
        ? []
        : WINDOWS_PROGRAMS.map((program) => win32.join(folder, program));
    });
  }
  if (machine.platform === 'darwin') {
    return ['/Applications', posix.join(machine.homeFolder, 'Applications')].flatMap((folder) =>
      MAC_APPLICATIONS.map((name) => `${folder}/${name}.app/Contents/MacOS/${name}`),
    );
  }
  return PROGRAM_NAMES.flatMap((name) =>
    machine.pathFolders.map((folder) => posix.join(folder, name)),
  );
};

/** Snap packages cannot see the folders tests write to; on Ubuntu a script may stand in for one. */
const isSnap = (machine: Machine, path: string): boolean => {
  const realPath = machine.realPath(path);
  if ([path, realPath].some((each) => each.startsWith('/snap/'))) return true;
  if (realPath.endsWith('/bin/snap')) return true;
  const start = machine.startOf(path);
  return start.startsWith('#!') && start.includes('/snap/bin/');
};
