import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export type TileServer = {
  readonly origin: string;
  /** Paths asked for so far. */
  readonly asked: readonly string[];
  /** From now on every tile is refused. */
  readonly fail: () => void;
  /** From now on every tile is a page of apology, sent as if all were well. */
  readonly saySorry: () => void;
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
  let answer: 'tiles' | 'failure' | 'page' = 'tiles';
  const server = createServer(({ url = '' }, response) => {
    asked.push(url);
    if (answer === 'failure') response.writeHead(503).end();
    else if (answer === 'page')
      response.writeHead(200, { 'Content-Type': 'text/html' }).end('<h1>Over the limit</h1>');
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
      answer = 'failure';
    },
    saySorry: () => {
      answer = 'page';
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
