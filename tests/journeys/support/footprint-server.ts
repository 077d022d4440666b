import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

export type FootprintAnswer = 'outlines' | 'overloaded' | 'web page' | 'never';

export type FootprintServer = {
  readonly address: string;
  readonly origin: string;
  /** Bodies of the questions so far, decoded. */
  readonly asked: readonly string[];
  readonly answerWith: (answer: FootprintAnswer) => void;
  readonly close: () => Promise<void>;
};

/** Three houses and a wall by the pier, in the shape that query interfaces of open map databases answer. */
const OUTLINES = {
  version: 0.6,
  osm3s: {
    timestamp_osm_base: '2027-05-01T10:00:00Z',
    copyright: 'Data of an invented database, for this test only.',
  },
  elements: [
    ...[0, 1, 2].map((number) => ({
      type: 'way',
      id: number + 1,
      tags: number === 2 ? { building: 'yes' } : { building: 'yes', height: String(9 + number) },
      geometry: ring(13.7627 + number * 0.0004, 45.6498),
    })),
    {
      type: 'way',
      id: 9,
      tags: { barrier: 'wall', height: '3' },
      geometry: [
        { lat: 45.6505, lon: 13.762 },
        { lat: 45.6505, lon: 13.763 },
      ],
    },
  ],
};

function ring(west: number, south: number): readonly { lat: number; lon: number }[] {
  const [east, north] = [west + 0.0002, south + 0.0002];
  return [
    { lat: south, lon: west },
    { lat: south, lon: east },
    { lat: north, lon: east },
    { lat: north, lon: west },
    { lat: south, lon: west },
  ];
}

/** A query interface on this machine only. */
export async function startFootprintServer(): Promise<FootprintServer> {
  const asked: string[] = [];
  let answer: FootprintAnswer = 'outlines';
  const server = createServer((request, response) => {
    let body = '';
    request.on('data', (part: Buffer) => {
      body += part.toString('utf8');
    });
    request.on('end', () => {
      asked.push(decodeURIComponent(body));
      send(response, answer);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const origin = `http://127.0.0.1:${port}`;
  return {
    address: `${origin}/api/interpreter`,
    origin,
    asked,
    answerWith: (next) => {
      answer = next;
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

const send = (response: ServerResponse, answer: FootprintAnswer): void => {
  response.setHeader('Access-Control-Allow-Origin', '*');
  switch (answer) {
    case 'outlines':
      response.writeHead(200, { 'Content-Type': 'application/json' }).end(JSON.stringify(OUTLINES));
      return;
    case 'overloaded':
      response.writeHead(504, { 'Content-Type': 'text/html' }).end('<h1>Gateway Timeout</h1>');
      return;
    case 'web page':
      response
        .writeHead(200, { 'Content-Type': 'text/html' })
        .end('<!doctype html><script>document.title = "run"</script>');
      return;
    case 'never':
      return;
  }
};
