import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

export type FolderServer = {
  /** Ends in a slash. */
  readonly url: string;
  readonly close: () => Promise<void>;
};

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

/** Serves a folder below a path of this machine, as a plain host of pages does; closing cuts every connection. */
export const serveFolder = async (folder: string, below: string): Promise<FolderServer> => {
  const prefix = `/${below}/`;
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    if (!pathname.startsWith(prefix)) return void response.writeHead(404).end();
    const asked = pathname.slice(prefix.length) || 'index.html';
    readFile(join(folder, normalize(`/${decodeURIComponent(asked)}`))).then(
      (bytes) =>
        response
          .writeHead(200, { 'Content-Type': TYPES[extname(asked)] ?? 'application/octet-stream' })
          .end(bytes),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}${prefix}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};
