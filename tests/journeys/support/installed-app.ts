import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { serveFolder } from '../../support/folder-server.ts';

export type InstalledApp = {
  readonly url: string;
  /** A newer build: one file of the app differs, and so does what the worker knows of it. */
  readonly renew: () => Promise<void>;
  /** Nobody answers any more. */
  readonly stop: () => Promise<void>;
  readonly remove: () => Promise<void>;
};

/** A copy of the last build, served from a folder below the root of a host of its own. */
export async function serveInstalledApp(): Promise<InstalledApp> {
  const folder = await mkdtemp(join(tmpdir(), 'undersky-installed-'));
  await cp('dist', folder, { recursive: true });
  const { url, close } = await serveFolder(folder, 'pages/undersky');
  const change = async (file: string, from: RegExp, to: string): Promise<void> => {
    const path = join(folder, file);
    const before = await readFile(path, 'utf8');
    const after = before.replace(from, to);
    if (after === before) throw new Error(`${file} holds nothing like ${String(from)}.`);
    await writeFile(path, after);
  };
  return {
    url,
    renew: async () => {
      await change('index.html', /<title>[^<]*/, '<title>Undersky, newer');
      await change('sw.js', /(url:"index\.html",revision:")[^"]*/, '$1newer');
    },
    stop: close,
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}
