import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { crc32, deflateSync } from 'node:zlib';

/** Samples a side of a 3″ file, edges shared. */
const SIDE = 1201;

/**
 * A 3″ elevation file as the format lays it out: no header, 16 bits signed, high byte first, row by
 * row from the north. Sea level but for a wall of one height along a meridian.
 */
export function wallHgt(wall: { readonly column: number; readonly heightM: number }): Buffer {
  const file = Buffer.alloc(SIDE * SIDE * 2);
  for (let row = 0; row < SIDE; row += 1)
    for (const column of [wall.column, wall.column + 1])
      file.writeInt16BE(wall.heightM, 2 * (row * SIDE + column));
  return file;
}

type Pixel = readonly [red: number, green: number, blue: number];

/** A PNG of 8-bit colour, written by hand: signature, head, one packed image, end. (ISO/IEC 15948) */
export function png(
  size: { readonly widthPx: number; readonly heightPx: number },
  colourAt: (xPx: number, yPx: number) => Pixel,
): Buffer {
  const { widthPx, heightPx } = size;
  const head = Buffer.alloc(13);
  head.writeUInt32BE(widthPx, 0);
  head.writeUInt32BE(heightPx, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const rows = Buffer.alloc(heightPx * (1 + 3 * widthPx));
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1)
      rows.set(colourAt(x, y), y * (1 + 3 * widthPx) + 1 + 3 * x);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

type HeightAnswer = 'tiles' | 'an error' | 'a web page' | 'nothing';

export type HeightServer = {
  readonly origin: string;
  readonly asked: readonly string[];
  readonly answerWith: (what: HeightAnswer) => void;
  readonly close: () => Promise<void>;
};

/** Height tiles on this machine, 100 m everywhere: red 128, green 100, blue 0. */
export async function startHeightServer(): Promise<HeightServer> {
  const tile = png({ widthPx: 256, heightPx: 256 }, () => [128, 100, 0]);
  const asked: string[] = [];
  let answer: HeightAnswer = 'tiles';
  const server = createServer(({ url = '' }, response) => {
    asked.push(url);
    const open = { 'Access-Control-Allow-Origin': '*', 'Cache-Control': 'no-store' };
    // The connection stays open without a word.
    if (answer === 'nothing') return;
    if (answer === 'an error') response.writeHead(503, open).end();
    else if (answer === 'a web page')
      response.writeHead(200, { ...open, 'Content-Type': 'text/html' }).end('<h1>Down</h1>');
    else response.writeHead(200, { ...open, 'Content-Type': 'image/png' }).end(tile);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    asked,
    answerWith: (what) => {
      answer = what;
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
