import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export type TileServer = {
  readonly origin: string;
  /** Paths asked for so far. */
  readonly asked: readonly string[];
  /** From now on every tile is refused. */
  readonly fail: () => void;
  readonly close: () => Promise<void>;
};

/** One black pixel. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
  'base64',
);

/** Map tiles on this machine only. */
export async function startTileServer(): Promise<TileServer> {
  const asked: string[] = [];
  let failing = false;
  const server = createServer(({ url = '' }, response) => {
    asked.push(url);
    if (failing) response.writeHead(503).end();
    else
      response
        .writeHead(200, { 'Content-Type': 'image/png', 'Cache-Control': 'no-store' })
        .end(PIXEL);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    asked,
    fail: () => {
      failing = true;
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
