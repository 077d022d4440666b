import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, test } from 'vitest';
import { tileAt } from '../../src/core/skyline/web-mercator.ts';
import { elevationService, type ElevationLimits } from '../../src/services/elevation.ts';
import { elevationTiles } from '../../src/services/elevation-tiles.ts';
import { heightPng } from '../support/height-png.ts';

const place = { latitudeDeg: 46, longitudeDeg: 7.5 };
const GOOD = heightPng(256, () => 1200);

type Answering = (response: ServerResponse, request: IncomingMessage, count: number) => void;

const open: { close: () => Promise<void> }[] = [];
afterEach(async () => {
  await Promise.all(open.splice(0).map(({ close }) => close()));
});

/** A server of height tiles on this machine, as the scheme has it: /{z}/{x}/{y}.png. */
const serve = async (
  answer: Answering,
): Promise<{ template: string; asked: IncomingMessage[]; atOnce: () => number }> => {
  const asked: IncomingMessage[] = [];
  let now = 0;
  let most = 0;
  const server = createServer((request, response) => {
    asked.push(request);
    now += 1;
    most = Math.max(most, now);
    response.on('close', () => {
      now -= 1;
    });
    answer(response, request, asked.length);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  open.push({
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  });
  const { port } = server.address() as AddressInfo;
  return { template: `http://127.0.0.1:${port}/{z}/{x}/{y}.png`, asked, atOnce: () => most };
};

const good = (response: ServerResponse): void => {
  response.writeHead(200, { 'Content-Type': 'image/png' }).end(GOOD);
};

const text =
  (status: number, type: string, body: string): Answering =>
  (response) => {
    response.writeHead(status, { 'Content-Type': type }).end(body);
  };

const png =
  (bytes: Uint8Array): Answering =>
  (response) => {
    response.writeHead(200, { 'Content-Type': 'image/png' }).end(bytes);
  };

const number = ({ zoom, x, y }: { zoom: number; x: number; y: number }) => `/${zoom}/${x}/${y}.png`;

const limits: ElevationLimits = { tileMs: 20_000, wholeMs: 25_000, atOnce: 4 };
const impatient: ElevationLimits = { ...limits, tileMs: 150 };

const ask = (
  template: string,
  hooks: Parameters<ReturnType<typeof elevationService>['tilesAround']>[1] = {},
) => elevationService({ template, fetch, limits }).tilesAround(place, hooks);

describe('which tiles', () => {
  test.each([0, 30, 46, 60, -68, 80])(
    'at %d° they cover 40 km, finer within 12 km, and are no more than 120',
    (latitudeDeg) => {
      const at = { latitudeDeg, longitudeDeg: 7.5 };
      const tiles = elevationTiles(at);
      expect(tiles.length).toBeLessThan(120);
      expect(new Set(tiles.map(({ zoom, x, y }) => `${zoom}/${x}/${y}`)).size).toBe(tiles.length);
      const zooms = [...new Set(tiles.map(({ zoom }) => zoom))].toSorted(
        (one, other) => other - one,
      );
      expect(zooms).toHaveLength(2);
      // One degree of latitude is 110.57 to 111.69 km; 0.9 of the way out in all four directions.
      for (const [ring, reachM] of [
        [0, 12_000],
        [1, 40_000],
      ] as const)
        for (const [north, east] of [
          [0, 0],
          [1, 0],
          [-1, 0],
          [0, 1],
          [0, -1],
        ] as const) {
          const zoom = zooms[ring] ?? 0;
          const far = (0.9 * reachM) / 111_000;
          const wanted = tileAt(
            {
              latitudeDeg: latitudeDeg + north * far,
              longitudeDeg: 7.5 + (east * far) / Math.cos((latitudeDeg * Math.PI) / 180),
            },
            zoom,
          );
          expect(tiles).toContainEqual(wanted);
        }
    },
  );

  test('beside the date line tiles of both sides', () => {
    const zoom = elevationTiles({ latitudeDeg: -17, longitudeDeg: 179.99 })[0]?.zoom ?? 0;
    const columns = elevationTiles({ latitudeDeg: -17, longitudeDeg: 179.99 })
      .filter((tile) => tile.zoom === zoom)
      .map(({ x }) => x);
    expect(columns).toContain(0);
    expect(columns).toContain(2 ** zoom - 1);
  });
});

describe('what a request would send is said before anything is sent', () => {
  test('host, number of tiles, size and how closely the spot is told', async () => {
    const { template, asked } = await serve(good);
    const request = elevationService({ template, fetch }).describe(place);
    const { host } = new URL(template);
    expect(request).toMatchObject({
      ok: true,
      value: { host, tileCount: elevationTiles(place).length, withinKm: 7 },
    });
    expect(request.ok && request.value.sentence).toContain(
      `are asked of ${host}. Their numbers tell it, to within about 7 km`,
    );
    expect(asked).toHaveLength(0);
  });

  test.each([
    { template: '', says: 'with {z}, {x} and {y} in it, found none.' },
    {
      template: 'https://tiles.invalid/{z}/{x}.png',
      says: 'found https://tiles.invalid/{z}/{x}.png',
    },
    { template: 'tiles/{z}/{x}/{y}', says: 'beginning with https://' },
    { template: 'http://tiles.invalid/{z}/{x}/{y}', says: 'beginning with https://' },
    { template: 'javascript:{z}{x}{y}', says: 'beginning with https://' },
  ])('no address of tiles: ‘$template’', async ({ template, says }) => {
    const service = elevationService({ template, fetch: () => Promise.reject(new Error('sent')) });
    const problem = { kind: 'bad-address', sentence: expect.stringContaining(says) };
    expect(service.describe(place)).toEqual({ ok: false, problem });
    expect(await service.tilesAround(place)).toEqual({ ok: false, problem });
  });

  test('beyond the square of the projection there are no tiles', () => {
    const service = elevationService({ template: 'https://tiles.invalid/{z}/{x}/{y}', fetch });
    expect(service.describe({ latitudeDeg: 86, longitudeDeg: 0 })).toMatchObject({
      ok: false,
      problem: { kind: 'not-found' },
    });
  });
});

test('all tiles come, a few at once, with progress, without cookies and without saying from where', async () => {
  const server = await serve((response) => setTimeout(() => good(response), 5));
  const shares: number[] = [];
  const answer = await ask(server.template, { onProgress: (share) => shares.push(share) });
  if (!answer.ok) throw new Error(answer.problem.sentence);
  const wanted = new Set(elevationTiles(place).map(number));
  expect(new Set(answer.value.map(number))).toEqual(wanted);
  expect(new Set(server.asked.map(({ url }) => url))).toEqual(wanted);
  expect(server.asked).toHaveLength(wanted.size);
  expect(new Uint8Array(answer.value[0]?.png ?? new ArrayBuffer(0))).toEqual(GOOD);
  expect(shares.at(-1)).toBe(1);
  expect(server.atOnce()).toBeGreaterThan(1);
  expect(server.atOnce()).toBeLessThanOrEqual(limits.atOnce);
  for (const { headers } of server.asked) {
    expect(headers.referer).toBeUndefined();
    expect(headers.cookie).toBeUndefined();
  }
});

test('a tile that fails once is asked for once more', async () => {
  const server = await serve((response, _, count) => {
    if (count === 3) response.writeHead(503).end();
    else if (count === 7) response.destroy();
    else good(response);
  });
  expect(await ask(server.template)).toMatchObject({ ok: true });
  expect(server.asked).toHaveLength(elevationTiles(place).length + 2);
});

describe('a server that does wrong is told of, and the rest is not asked for', () => {
  test.each<{ what: string; answer: Answering; kind: string; says: string }>([
    {
      what: 'no such tile',
      answer: text(404, 'text/plain', 'no'),
      kind: 'not-found',
      says: 'has no height tile',
    },
    {
      what: 'an error',
      answer: text(500, 'text/html', '<h1>'),
      kind: 'refused',
      says: '(status 500)',
    },
    {
      what: 'a sign-in',
      answer: text(403, 'text/html', '<h1>'),
      kind: 'refused',
      says: '(status 403)',
    },
    {
      what: 'an error page with status 200',
      answer: text(200, 'text/html; charset=utf-8', '<script>alert(1)</script>'),
      kind: 'wrong-content',
      says: 'found a web page',
    },
    {
      what: 'text',
      answer: text(200, 'application/json', '{}'),
      kind: 'wrong-content',
      says: 'found something else (application/json)',
    },
    {
      what: 'nothing',
      answer: (response) => response.writeHead(200).end(),
      kind: 'wrong-content',
      says: 'found something else (of no stated type)',
    },
    {
      what: 'tiles of another size',
      answer: png(heightPng(128, () => 5)),
      kind: 'wrong-content',
      says: 'found 128 × 128 pixels',
    },
    {
      what: 'tiles that are not square',
      answer: png(heightPng(256, () => 5, { heightPx: 255 })),
      kind: 'wrong-content',
      says: 'found 256 × 255 pixels',
    },
    {
      what: 'grey pictures',
      answer: png(heightPng(256, () => 5, { colourType: 0 })),
      kind: 'wrong-content',
      says: 'found a PNG of other colours',
    },
    {
      what: 'a tile cut short',
      answer: png(GOOD.slice(0, -20)),
      kind: 'wrong-content',
      says: 'found a PNG that was cut short',
    },
    {
      what: 'megabytes',
      answer: png(new Uint8Array(2_100_000)),
      kind: 'wrong-content',
      says: 'an answer of more than 2 MB',
    },
    { what: 'silence', answer: () => undefined, kind: 'slow', says: 'did not answer in time' },
    {
      what: 'a body that never ends',
      answer: (response) =>
        void response.writeHead(200, { 'Content-Type': 'image/png' }).write(GOOD.slice(0, 50)),
      kind: 'slow',
      says: 'did not answer in time',
    },
    {
      what: 'a connection cut',
      answer: (response) => void response.destroy(),
      kind: 'unreachable',
      says: 'could not be reached',
    },
  ])('$what', async ({ answer, kind, says }) => {
    const server = await serve(answer);
    const sentence = expect.stringContaining(says);
    const service = elevationService({
      template: server.template,
      fetch,
      limits: kind === 'slow' ? impatient : limits,
    });
    expect(await service.tilesAround(place)).toEqual({
      ok: false,
      problem: { kind, sentence },
    });
    expect(server.asked.length).toBeLessThanOrEqual(2 * limits.atOnce);
  });

  test('no network', async () => {
    const service = elevationService({
      template: 'https://tiles.invalid/{z}/{x}/{y}.png',
      fetch: () => Promise.reject(new TypeError('fetch failed')),
    });
    expect(await service.tilesAround(place)).toEqual({
      ok: false,
      problem: {
        kind: 'unreachable',
        sentence: 'tiles.invalid could not be reached. Is there a network?',
      },
    });
  });

  test('each tile in time but all together too late', async () => {
    const server = await serve((response) => setTimeout(() => good(response), 100));
    const slow = elevationService({
      template: server.template,
      fetch,
      limits: { ...limits, wholeMs: 350 },
    });
    expect(await slow.tilesAround(place)).toMatchObject({ ok: false, problem: { kind: 'slow' } });
  });
});

describe('cancelled', () => {
  test('in the middle: what runs is stopped and no further tile asked for', async () => {
    const stop = new AbortController();
    const server = await serve((response, _, count) => {
      if (count === 6) stop.abort();
      else setTimeout(() => good(response), 20);
    });
    const answer = await ask(server.template, { signal: stop.signal });
    expect(answer).toMatchObject({ ok: false, problem: { kind: 'cancelled' } });
    expect(server.asked.length).toBeLessThan(12);
  });

  test('before it began: nothing is sent', async () => {
    const server = await serve(good);
    const answer = await ask(server.template, { signal: AbortSignal.abort() });
    expect(answer).toMatchObject({ ok: false, problem: { kind: 'cancelled' } });
    expect(server.asked).toHaveLength(0);
  });
});
