import { spawn } from 'node:child_process';

const OPENERS: Readonly<Record<string, readonly [string, ...string[]]>> = {
  darwin: ['open'],
  win32: ['cmd', '/c', 'start', ''],
};

/** Resolves to whether the system took the address; never throws. BROWSER=none asks for nothing. */
export const openInBrowser = async (
  url: string,
  opener: readonly [string, ...string[]] = OPENERS[process.platform] ?? ['xdg-open'],
): Promise<boolean> => {
  if (process.env['BROWSER'] === 'none') return false;
  const [command, ...args] = opener;
  return new Promise((resolve) => {
    const child = spawn(command, [...args, url], { stdio: 'ignore', detached: true });
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
    child.once('spawn', () => setTimeout(() => resolve(child.exitCode === null), 3000));
    child.unref();
  });
};
