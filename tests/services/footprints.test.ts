import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

import { afterEach, describe, expect, test } from 'vitest';

import { readOutlinesGeoJson } from '../../src/exchange/outlines/read-outlines-geojson.ts';
import {
  describeFootprintRequest,
  fetchFootprints,
  FOOTPRINT_LIMITS,
  type FootprintRequest,
} from '../../src/services/footprints.ts';
import type { FootprintArea } from '../../src/services/footprint-query.ts';

const area: FootprintArea = { place: { latitudeDeg: 45.65, longitudeDeg: 13.76 }, halfSideM: 500 };

const closers: (() => void)[] = [];
afterEach(() => {
  for (const close of closers.splice(0)) close();
});

/** A server on this machine that answers in a given way; what it was asked is kept. */
async function serverThat(answer: (response: ServerResponse, body: string) => void): Promise<{
  readonly endpoint: string;
  readonly asked: { request: IncomingMessage; body: string }[];
}> {
  const asked: { request: IncomingMessage; body: string }[] = [];
  const server = createServer((request, response) => {
    let body = '';
    request.on('data', (part: Buffer) => {
      body += part.toString();
    });
    request.on('end', () => {
      asked.push({ request, body });
      answer(response, body);
    });
  });
  await new Promise<void>((ready) => {
    server.listen(0, '127.0.0.1', ready);
  });
  closers.push(() => {
    server.closeAllConnections();
    server.close();
  });
  const { port } = server.address() as AddressInfo;
  return { endpoint: `http://127.0.0.1:${port}/interpreter`, asked };
}

const json = (response: ServerResponse, value: unknown): void => {
  response.writeHead(200, { 'Content-Type': 'application/json' });
  response.end(JSON.stringify(value));
};

const corners = (...pairs: readonly (readonly [number, number])[]): readonly object[] =>
  pairs.map(([lat, lon]) => ({ lat, lon }));

/** In the shape the database's documentation gives for JSON output with geometry. */
const WHOLE = {
  version: 0.6,
  generator: 'a server in a test',
  osm3s: {
    timestamp_osm_base: '2027-05-01T10:00:00Z',
    copyright: 'Made available under an open licence.',
  },
  elements: [
    {
      type: 'way',
      id: 1,
      tags: { building: 'yes', height: '12' },
      geometry: corners([45.65, 13.76], [45.65, 13.761], [45.651, 13.761], [45.65, 13.76]),
    },
    {
      type: 'way',
      id: 2,
      tags: { barrier: 'wall' },
      geometry: corners([45.65, 13.76], [45.66, 13.76]),
    },
    { type: 'node', id: 3, lat: 45.65, lon: 13.765, tags: { natural: 'tree' } },
    {
      type: 'relation',
      id: 4,
      tags: { type: 'multipolygon', building: 'yes', 'building:levels': '4' },
      members: [
        // Two halves of the outer ring, the second drawn backwards, and a yard.
        {
          type: 'way',
          role: 'outer',
          geometry: corners([45.652, 13.76], [45.652, 13.762], [45.654, 13.762]),
        },
        {
          type: 'way',
          role: 'outer',
          geometry: corners([45.652, 13.76], [45.654, 13.76], [45.654, 13.762]),
        },
        {
          type: 'way',
          role: 'inner',
          geometry: corners(
            [45.6525, 13.7605],
            [45.6525, 13.7615],
            [45.6535, 13.7615],
            [45.6525, 13.7605],
          ),
        },
      ],
    },
    { type: 'way', id: 5, tags: { building: 'yes' } },
  ],
};

const ask = (
  endpoint: string,
  more: Partial<FootprintRequest> = {},
): ReturnType<typeof fetchFootprints> =>
  fetchFootprints(fetch, { endpoint, area, limits: { timeMs: 5000, bytes: 1e6 }, ...more });

const problemOf = async (
  endpoint: string,
  more: Partial<FootprintRequest> = {},
): Promise<readonly [string, string]> => {
  const answer = await ask(endpoint, more);
  return answer.ok ? ['none', ''] : [answer.problem.kind, answer.problem.sentence];
};

describe('outlines round a spot, asked of a server', () => {
  test('ways, multipolygons and trees become outlines as a file would give them', async () => {
    const { endpoint } = await serverThat((response) => json(response, WHOLE));
    const answer = await ask(endpoint);
    if (!answer.ok) throw new Error(answer.problem.sentence);
    expect(answer.value).toMatchObject({
      count: 4,
      dated: '2027-05-01',
      notice: 'Made available under an open licence.',
      notes: ['1 came without corners and were left out.'],
    });
    const reading = readOutlinesGeoJson(answer.value.geoJson);
    if (!reading.ok) throw new Error(reading.problem);
    expect(
      reading.value.outlines.map(({ obstacle }) => [
        obstacle.kind,
        obstacle.heightM,
        obstacle.closed,
        obstacle.outline.length,
        obstacle.holes?.length ?? 0,
      ]),
    ).toEqual([
      ['building', 12, true, 3, 0],
      ['wall', 2, false, 2, 0],
      ['trees', 8, true, 12, 0],
      ['building', 12, true, 4, 1],
    ]);
  });

  test('one request is made, with the corners of the square and nothing else of the shoot', async () => {
    const { endpoint, asked } = await serverThat((response) => json(response, WHOLE));
    await ask(endpoint);
    expect(asked).toHaveLength(1);
    expect(asked[0]?.request.method).toBe('POST');
    expect(asked[0]?.request.headers['content-type']).toBe('application/x-www-form-urlencoded');
    expect(asked[0]?.request.headers.cookie).toBeUndefined();
    expect(asked[0]?.request.headers.referer).toBeUndefined();
    const query = new URLSearchParams(asked[0]?.body).get('data') ?? '';
    expect(query).toMatch(/^\[out:json\]\[timeout:\d+\]\[maxsize:\d+\];\(/);
    // 500 m are 0.00450° of latitude and 0.00641° of longitude at 45.65°.
    expect(query).toContain('way["building"](45.64550,13.75359,45.65450,13.76641);');
    expect(query).toMatch(/out geom;$/);
  });

  test('over the antimeridian two boxes are asked for', async () => {
    const { endpoint, asked } = await serverThat((response) => json(response, WHOLE));
    const place = { latitudeDeg: 0, longitudeDeg: 179.999 };
    await ask(endpoint, { area: { place, halfSideM: 1000 } });
    const query = new URLSearchParams(asked[0]?.body).get('data') ?? '';
    expect(query).toContain('way["building"](-0.00904,179.99002,0.00904,180.00000);');
    expect(query).toContain('way["building"](-0.00904,-180.00000,0.00904,-179.99202);');
  });

  test('before it is asked, it is said what goes to whom', () => {
    const told = describeFootprintRequest({
      endpoint: 'https://maps.example/api/interpreter',
      area,
    });
    expect(told).toContain('maps.example');
    expect(told).toContain('1.0 × 1.0 km');
    expect(told).toContain('network address');
  });
});

describe('what goes wrong is said', () => {
  test.each([
    [429, 'busy', 'enough questions'],
    [504, 'busy', 'overloaded (504)'],
    [503, 'busy', 'overloaded (503)'],
    [400, 'refused', 'status 400'],
    [404, 'refused', 'status 404'],
    [500, 'refused', 'status 500'],
  ])('status %d', async (status, kind, sentence) => {
    const { endpoint } = await serverThat((response) => {
      response.writeHead(status, { 'Content-Type': 'text/html' });
      response.end('<html><script>alert(1)</script></html>');
    });
    expect(await problemOf(endpoint)).toEqual([kind, expect.stringContaining(sentence)]);
  });

  test.each([
    [
      'an error page with status 200',
      '<?xml version="1.0"?><html><p>rate limited',
      'unreadable',
      'a web page',
    ],
    ['an answer cut short', JSON.stringify(WHOLE).slice(0, 300), 'unreadable', 'breaks off'],
    ['an empty answer', '', 'unreadable', 'breaks off'],
    ['other JSON', '{"spots":[]}', 'unreadable', 'no list of elements'],
    ['a list', '[]', 'unreadable', 'no list of elements'],
    ['nothing there', '{"elements":[]}', 'nothing', 'does not mean that none stand there'],
    [
      'a server that gave up half way',
      JSON.stringify({
        ...WHOLE,
        remark: 'runtime error: Query timed out in "query" at line 4 after 25 seconds. <b>x</b>',
      }),
      'gave-up',
      'Query timed out in "query" at line 4 after 25 seconds. x”',
    ],
    ['an answer too large', JSON.stringify({ elements: ['x'.repeat(2e6)] }), 'too-large', '1 MB'],
  ])('%s', async (_, body, kind, sentence) => {
    const { endpoint } = await serverThat((response) => {
      response.writeHead(200, { 'Content-Type': 'application/json' });
      response.end(body);
    });
    expect(await problemOf(endpoint)).toEqual([kind, expect.stringContaining(sentence)]);
  });

  test('a remark that is no error goes along as a note', async () => {
    const { endpoint } = await serverThat((response) =>
      json(response, { ...WHOLE, remark: 'runtime remark: Test' }),
    );
    const answer = await ask(endpoint);
    expect(answer.ok && answer.value.notes).toContain(
      'The server remarks: “runtime remark: Test”.',
    );
  });

  test('elements of any shape are passed over', async () => {
    const odd = [
      null,
      7,
      {},
      { type: 'way', geometry: [null, { lat: 'x' }] },
      { type: 'relation', members: 3 },
    ];
    const { endpoint } = await serverThat((response) =>
      json(response, { elements: [...odd, ...WHOLE.elements.slice(0, 1)] }),
    );
    const answer = await ask(endpoint);
    expect(answer.ok && answer.value.count).toBe(1);
  });

  test('a server that never answers', async () => {
    const { endpoint } = await serverThat(() => undefined);
    const problem = await problemOf(endpoint, { limits: { timeMs: 150, bytes: 1e6 } });
    expect(problem[0]).toBe('too-slow');
  });

  test('a server that begins and then only drips', async () => {
    const { endpoint } = await serverThat((response) => {
      response.writeHead(200);
      response.write('{"elements":[');
      const drip = setInterval(() => response.write(' '), 20);
      response.on('close', () => clearInterval(drip));
    });
    const problem = await problemOf(endpoint, { limits: { timeMs: 200, bytes: 1e6 } });
    expect(problem[0]).toBe('too-slow');
  });

  test('a connection that breaks off', async () => {
    const { endpoint } = await serverThat((response) => {
      response.writeHead(200, { 'Content-Length': 5000 });
      response.write('{"elements":[');
      setTimeout(() => response.destroy(), 20);
    });
    expect((await problemOf(endpoint))[0]).toBe('unreachable');
  });

  test('no server at all', async () => {
    const { endpoint } = await serverThat(() => undefined);
    for (const close of closers.splice(0)) close();
    expect((await problemOf(endpoint))[0]).toBe('unreachable');
  });

  test('cancelled while it waits, and before it begins', async () => {
    const stop = new AbortController();
    const { endpoint, asked } = await serverThat(() => stop.abort());
    expect((await problemOf(endpoint, { signal: stop.signal }))[0]).toBe('cancelled');
    expect((await problemOf(endpoint, { signal: stop.signal }))[0]).toBe('cancelled');
    expect(asked).toHaveLength(1);
  });

  test.each([
    ['', 'bad-address'],
    ['maps.example', 'bad-address'],
    ['http://maps.example/api', 'bad-address'],
    ['javascript:alert(1)', 'bad-address'],
  ])('the address ‘%s’ is not asked', async (endpoint, kind) => {
    let calls = 0;
    const answer = await fetchFootprints(
      () => {
        calls += 1;
        return Promise.reject(new Error('asked'));
      },
      { endpoint, area },
    );
    expect(answer).toMatchObject({ ok: false, problem: { kind } });
    expect(calls).toBe(0);
  });

  test.each([
    [{ ...area, halfSideM: 2001 }, 'expected at most 4 km'],
    [{ ...area, halfSideM: NaN }, 'expected at most 4 km'],
    [{ ...area, place: { latitudeDeg: 89.5, longitudeDeg: 0 } }, 'Within a degree of a pole'],
  ])('too wide an area is not asked for: %#', async (wide, sentence) => {
    const { endpoint, asked } = await serverThat((response) => json(response, WHOLE));
    expect(await problemOf(endpoint, { area: wide })).toEqual([
      'too-wide',
      expect.stringContaining(sentence),
    ]);
    expect(asked).toHaveLength(0);
  });

  test('by itself it waits 40 s and takes 30 MB at most', () => {
    expect(FOOTPRINT_LIMITS).toEqual({ timeMs: 40_000, bytes: 30e6 });
  });
});
