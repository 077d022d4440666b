import { gpx as gpxToGeoJson } from '@tmcw/togeojson';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { DayEvent } from '../../../src/exchange/day-event.ts';
import { writeGpxRoute } from '../../../src/exchange/waypoints/gpx-route.ts';
import { gpx } from '../../../src/exchange/waypoints/gpx.ts';
import { dayArbitrary, plainEvent } from '../../support/day-event-arbitrary.ts';
import { defined } from '../../support/defined.ts';

const GPX = 'http://www.topografix.com/GPX/1/1';

const routeOf = (events: readonly DayEvent[]): Document => {
  const file = writeGpxRoute({ title: 'Quartet & sea', events });
  if (!file.ok) throw new Error(file.problem);
  const document = new DOMParser().parseFromString(file.value, 'application/xml');
  expect(document.getElementsByTagName('parsererror').length).toBe(0);
  return document;
};

const points = (document: Document): readonly Element[] => [
  ...document.getElementsByTagNameNS(GPX, 'rtept'),
];

const mole = { latitudeDeg: 45.66, longitudeDeg: 13.75 };

const minute = (at: number): { readonly startMs: number; readonly endMs: number } => ({
  startMs: Date.UTC(2027, 4, 14, 14, at),
  endMs: Date.UTC(2027, 4, 14, 14, at + 10),
});

/** Out of order, with a drive that has no position, and the pier visited twice. */
const DAY: readonly DayEvent[] = [
  plainEvent({ id: 'back', title: 'Solo', ...minute(50) }),
  plainEvent({ id: 'mole', title: 'Duo', place: 'Mole', position: mole, ...minute(40) }),
  plainEvent({ id: 'drive', title: 'Drive', position: null, place: '', ...minute(30) }),
  plainEvent({ id: 'shoot', title: 'Quartet', description: 'Key left', ...minute(10) }),
  plainEvent({ id: 'build', title: 'Build', description: '', ...minute(0) }),
];

describe('the day as a route', () => {
  test('its points stand in the order of the day, each with the instant of its first event', () => {
    const document = routeOf(DAY);
    expect(
      points(document).map((point) => [
        point.getAttribute('lat'),
        point.getAttribute('lon'),
        ...[...point.children].map(({ localName, textContent }) => [localName, textContent]),
      ]),
    ).toEqual([
      [
        '45.6503',
        '13.7571',
        ['time', '2027-05-14T14:00:00.000Z'],
        ['name', 'Pier'],
        [
          'desc',
          'Fri 14 May 2027, 16:00 to 16:10, Europe/Rome (UTC+2): Build\nFri 14 May 2027, 16:10 to 16:20, Europe/Rome (UTC+2): Quartet\nKey left',
        ],
      ],
      [
        '45.66',
        '13.75',
        ['time', '2027-05-14T14:40:00.000Z'],
        ['name', 'Mole'],
        ['desc', 'Fri 14 May 2027, 16:40 to 16:50, Europe/Rome (UTC+2): Duo\nKey at the left'],
      ],
      [
        '45.6503',
        '13.7571',
        ['time', '2027-05-14T14:50:00.000Z'],
        ['name', 'Pier'],
        ['desc', 'Fri 14 May 2027, 16:50 to 17:00, Europe/Rome (UTC+2): Solo\nKey at the left'],
      ],
    ]);
  });

  test.each<[string, Partial<DayEvent>]>([
    ['further north', { position: { latitudeDeg: 45.66, longitudeDeg: 13.7571 } }],
    ['further east', { position: { latitudeDeg: 45.6503, longitudeDeg: 13.76 } }],
    ['of another name', { place: 'Steps by the pier' }],
  ])('a place %s is a point of its own', (_, changes) => {
    const next = plainEvent({ id: 'next', ...minute(40), ...changes });
    expect(points(routeOf([plainEvent(minute(0)), next])).length).toBe(2);
    expect(
      points(routeOf([plainEvent(minute(0)), { ...plainEvent(minute(40)), id: 'b' }])).length,
    ).toBe(1);
  });

  test('the file is the one that the GPX 1.1 schema describes', () => {
    const root = routeOf(DAY).documentElement;
    expect([root.localName, root.namespaceURI, root.getAttribute('version')]).toEqual([
      'gpx',
      GPX,
      '1.1',
    ]);
    expect([...root.children].map(({ localName }) => localName)).toEqual(['metadata', 'rte']);
    const route = defined(root.children[1]);
    expect(route.children[0]?.outerHTML).toContain('>Quartet &amp; sea<');
    // wptType is a sequence: what is there stands in this order.
    const order = ['ele', 'time', 'magvar', 'geoidheight', 'name', 'cmt', 'desc'];
    const withHeight = plainEvent({ position: { ...mole, elevationM: 3.25 } });
    const names = [...defined(points(routeOf([withHeight]))[0]).children].map(
      (one) => one.localName,
    );
    expect(names).toEqual(['ele', 'time', 'name', 'desc']);
    expect(names).toEqual(order.filter((name) => names.includes(name)));
  });

  test('an independent reader draws the line through the same places', () => {
    const [line] = gpxToGeoJson(routeOf(DAY)).features;
    expect(line?.properties).toMatchObject({ _gpxType: 'rte', name: 'Quartet & sea' });
    expect(line?.geometry).toEqual({
      type: 'LineString',
      coordinates: [
        [13.7571, 45.6503],
        [13.75, 45.66],
        [13.7571, 45.6503],
      ],
    });
  });

  test('any day is well-formed, its points within the schema’s bounds and in order of time', () => {
    fc.assert(
      fc.property(dayArbitrary(), (events) => {
        const placed = events.filter(({ position }) => position !== null);
        if (placed.length === 0) {
          expect(writeGpxRoute({ title: '', events })).toMatchObject({ ok: false });
          return;
        }
        const found = points(routeOf(events));
        const instants = found.map((point) =>
          Date.parse(point.getElementsByTagNameNS(GPX, 'time')[0]?.textContent ?? ''),
        );
        expect(instants).toEqual(instants.toSorted((one, other) => one - other));
        expect(instants[0]).toBe(Math.min(...placed.map(({ startMs }) => startMs)));
        for (const point of found) {
          expect(Math.abs(Number(point.getAttribute('lat')))).toBeLessThanOrEqual(90);
          expect(Number(point.getAttribute('lon'))).toBeGreaterThanOrEqual(-180);
          expect(Number(point.getAttribute('lon'))).toBeLessThan(180);
        }
      }),
      { numRuns: 50 },
    );
  });

  test('read back here its points are waypoints, and that is said', () => {
    const file = writeGpxRoute({ title: 'Day', events: DAY });
    if (!file.ok) throw new Error(file.problem);
    const read = gpx.readText(file.value);
    if (!read.ok) throw new Error(read.problem);
    expect(read.value.waypoints.map(({ name, takenAtMs }) => [name, takenAtMs])).toEqual([
      ['Pier', Date.UTC(2027, 4, 14, 14)],
      ['Mole', Date.UTC(2027, 4, 14, 14, 40)],
      ['Pier', Date.UTC(2027, 4, 14, 14, 50)],
    ]);
    expect(read.value.notes).toEqual([
      'The file has no waypoints: the points of its route are taken.',
    ]);
  });

  test('a day without any position is no route, and an unsound one is refused', () => {
    expect(writeGpxRoute({ title: 'Day', events: [plainEvent({ position: null })] })).toEqual({
      ok: false,
      problem: 'The day has no entry with a position: expected one at least, for a route.',
    });
    expect(writeGpxRoute({ title: 'Day', events: [plainEvent({ endMs: 0 })] })).toMatchObject({
      ok: false,
      problem: expect.stringContaining('before it starts'),
    });
  });
});
