import { describe, expect, test } from 'vitest';

import type { GeoPoint } from '../../../src/core/place/geo-point.ts';
import { readCoordinateLines } from '../../../src/exchange/waypoints/coordinate-lines.ts';
import type { WaypointReading } from '../../../src/exchange/waypoints/waypoint-format.ts';

const reading = (text: string, near: GeoPoint | null = null): WaypointReading => {
  const read = readCoordinateLines(text, { near });
  if (!read.ok) throw new Error(read.problem);
  return read.value;
};

const places = (text: string): readonly (readonly [string | null, number, number])[] =>
  reading(text).waypoints.map(({ name, latitudeDeg, longitudeDeg }) => [
    name,
    Math.round(latitudeDeg * 1e6) / 1e6,
    Math.round(longitudeDeg * 1e6) / 1e6,
  ]);

test('a scouting day pasted as it was jotted down', () => {
  expect(
    places(`Pier head, 45.6503, 13.7571
      Steps: 45°39′01.08″ N 13°45′25.56″ E

      Karst edge; 45 39.018 N 13 45.426 E
      45,6503; 13,7571; Quay, west end
      geo:45.6503,13.7571,3;u=12
      Lighthouse geo:45.6503,13.7571
      arches | N45.6503 E13.7571
      Mole 7 - 45.6503 13.7571`),
  ).toEqual([
    ['Pier head', 45.6503, 13.7571],
    ['Steps', 45.6503, 13.7571],
    ['Karst edge', 45.6503, 13.7571],
    ['Quay, west end', 45.6503, 13.7571],
    [null, 45.6503, 13.7571],
    ['Lighthouse', 45.6503, 13.7571],
    ['arches', 45.6503, 13.7571],
    ['Mole 7', 45.6503, 13.7571],
  ]);
});

test('one place over two lines is one place', () => {
  expect(places('45.6503\n13.7571')).toEqual([[null, 45.6503, 13.7571]]);
  expect(places('45°39.018′ N\r\n13°45.426′ E')).toEqual([[null, 45.6503, 13.7571]]);
});

test('the altitude and uncertainty of an address are kept', () => {
  expect(reading('geo:48.2010,16.3695,183;u=40').waypoints[0]).toMatchObject({
    elevationM: 183,
    note: 'Position known to 40 m',
  });
});

describe('open location codes (values of the specification’s test data)', () => {
  test('a full one names the middle of its area', () => {
    const [mast] = reading('Mast 7FG49QCJ+2VX').waypoints;
    expect(mast?.name).toBe('Mast');
    expect(mast?.latitudeDeg).toBeCloseTo((20.3701 + 20.370125) / 2, 9);
    expect(mast?.longitudeDeg).toBeCloseTo((2.78221875 + 2.78225) / 2, 9);
  });

  test('a short one is completed near the place in view, and that is said', () => {
    const near = { latitudeDeg: 47, longitudeDeg: 8.55 };
    const read = reading('XGRF+PM', near);
    // 8FRCXGRF+PM by its digits: 6·20 + 16 + 19/20 + 16/400 + 14/8000 − 90, and 9·20 + 8 + 10/20 + 9/400 + 13/8000 − 180.
    expect(read.waypoints[0]?.latitudeDeg).toBeCloseTo(46.99175 + 0.0000625, 9);
    expect(read.waypoints[0]?.longitudeDeg).toBeCloseTo(8.524125 + 0.0000625, 9);
    expect(read.notes).toEqual(['1 × short code, completed near the place in view.']);
    expect(readCoordinateLines('XGRF+PM', { near: null })).toMatchObject({
      ok: false,
      problem: expect.stringContaining('Found the short code XGRF+PM; expected the full code'),
    });
  });

  test('one of eight digits is taken with a word of how wide it is, one of six is refused', () => {
    expect(reading('8FWC2345+').notes).toEqual([
      '1 × code of eight digits, an area 278 m high: its middle is taken.',
    ]);
    expect(readCoordinateLines('8FWCX400+', { near: null })).toMatchObject({
      problem: expect.stringContaining('0.05° high; expected one of at least eight digits'),
    });
  });
});

test('what cannot be read is skipped, line by line, with what was found and expected', () => {
  const read = reading(`Pier, 45.6503, 13.7571
Meet at the gate at six
geo:45,181
95, 13
geo:1,2;crs=moon
${'x'.repeat(600)}`);
  expect(read.waypoints.length).toBe(1);
  expect(read.skipped.map(({ what, why }) => `${what}: ${why}`)).toEqual([
    expect.stringMatching(
      /^line 2, “Meet at the gate at six”: Found “Meet”; expected latitude and/,
    ),
    expect.stringMatching(/^line 3, .*longitude of 181°; expected −180° to 180°/),
    expect.stringMatching(/^line 4, .*latitude of 95°/),
    expect.stringMatching(/^line 5, .*coordinate system “moon”; expected WGS 84/),
    expect.stringMatching(/^line 6, .*a line of 600 characters; expected at most 500/),
  ]);
});

test('a text without any place is refused with its first line', () => {
  const read = readCoordinateLines('nothing here\nnor here', { near: null });
  expect(read).toMatchObject({ ok: false, problem: expect.stringMatching(/line 1.*And 1 more/) });
});

test('more than 5,000 places: the first 5,000 are taken, and that is said', () => {
  const read = reading(Array.from({ length: 5003 }, (_, at) => `45.${at}, 13.5`).join('\n'));
  expect(read.waypoints.length).toBe(5000);
  expect(read.notes).toEqual([
    'It holds 5003 waypoints: the first 5000 usable are taken, 3 after them are not.',
  ]);
});
