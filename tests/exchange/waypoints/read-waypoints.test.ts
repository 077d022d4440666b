import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';

import type { GeoPoint } from '../../../src/core/place/geo-point.ts';
import {
  readWaypointFile,
  readWaypointText,
  type WaypointFile,
} from '../../../src/exchange/waypoints/read-waypoints.ts';
import type { ReadWaypoints } from '../../../src/exchange/waypoints/waypoint-format.ts';

const file = (name: string, contents: string | Uint8Array): WaypointFile => {
  const bytes = typeof contents === 'string' ? strToU8(contents) : contents;
  return {
    name,
    size: bytes.length,
    arrayBuffer: () => Promise.resolve(new Uint8Array(bytes).buffer),
  };
};

const NOWHERE = { near: null };

const read = (name: string, contents: string | Uint8Array): Promise<ReadWaypoints> =>
  readWaypointFile(file(name, contents), NOWHERE);

const sentence = async (name: string, contents: string | Uint8Array): Promise<string> => {
  const reading = await read(name, contents);
  if (reading.ok) throw new Error('read');
  return reading.problem;
};

describe('what a file is, is told by its contents', () => {
  test('a table named as text, GeoJSON named as a table', async () => {
    expect(await read('spots.txt', 'name,lat,lon\nPier,45,13')).toMatchObject({
      ok: true,
      value: { waypoints: [{ name: 'Pier' }], notes: [] },
    });
    expect(await read('spots.csv', '{"type":"Point","coordinates":[13,45]}')).toMatchObject({
      ok: true,
      value: { notes: ['Named as CSV, but it is GeoJSON and was read as that.'] },
    });
  });

  test('UTF-16 as spreadsheets save it', async () => {
    const text = '\uFEFFname\tlat\tlon\r\nGröße\t45,5\t13,5\r\n';
    const bytes = new Uint8Array(Uint16Array.from(text, (one) => one.charCodeAt(0)).buffer);
    expect(await read('spots.txt', bytes)).toMatchObject({
      value: { waypoints: [{ name: 'Größe', latitudeDeg: 45.5, longitudeDeg: 13.5 }] },
    });
  });

  test('a pasted text of any kind', () => {
    expect(readWaypointText('45.6503, 13.7571', NOWHERE).ok).toBe(true);
    expect(readWaypointText('lat;lon\n45,5;13,5', NOWHERE).ok).toBe(true);
    expect(readWaypointText('{"type":"Point","coordinates":[13,45]}', NOWHERE).ok).toBe(true);
  });
});

describe('what is no file of waypoints gets a sentence', () => {
  test.each([
    ['empty.gpx', '', 'Expected waypoints, found an empty file.'],
    ['blank.csv', ' \n \n', 'Expected waypoints, found nothing but empty space.'],
    [
      'download.gpx',
      '<!DOCTYPE html><html><body>Sign in</body></html>',
      'Expected a GPX file, found a web page. The link may ask for a sign-in: save the file itself.',
    ],
    ['page.kml', '<html><head/></html>', /Expected a KML file, found a web page/],
    ['feed.gpx', '<rss version="2.0"></rss>', 'Expected a GPX file, found XML of the kind <rss>.'],
    ['notes.gpx', 'dear all', /Expected a GPX file, found plain text that begins with “dear all”/],
    ['spots.kmz', 'dear all', /Expected a KMZ file, found a file that is no zip/],
    [
      'spots.kmz',
      new Uint8Array([0xff, 0xd8, 0xff, 0, 0, 0, 0, 0, 0, 0]),
      'Expected a KMZ archive, found a file that is no zip.',
    ],
    ['photo.csv', new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 0x10, 1, 0]), /found a binary file/],
    [
      'spots.kmz',
      zipSync({ 'readme.txt': strToU8('x') }),
      'Expected a KML file in the archive, found none among its 1 files.',
    ],
    ['plain.txt', 'nothing to see', /found none in the text that can be used\. line 1/],
  ])('%s', async (name, contents, words) => {
    const found = await sentence(name, contents);
    if (typeof words === 'string') expect(found).toBe(words);
    else expect(found).toMatch(words);
  });

  test('entities that would explode are refused before anything parses them', async () => {
    const bomb = `<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "${'x'.repeat(50)}">${Array.from(
      { length: 9 },
      (_, at) => `<!ENTITY ${'bcdefghij'.charAt(at)} "${'&a;'.repeat(10)}">`,
    ).join('')}]><gpx><wpt lat="1" lon="1"><name>&j;</name></wpt></gpx>`;
    expect(await sentence('bomb.gpx', bomb)).toBe(
      'The GPX file declares entities of its own, which can be made to explode. Expected a file without them.',
    );
    const zipped = zipSync({ 'doc.kml': strToU8(bomb.replaceAll('gpx', 'kml')) });
    expect(await sentence('bomb.kmz', zipped)).toMatch(/The KML file declares entities/);
  });

  test('a file above 20 MB is not opened', async () => {
    const huge = {
      ...file('x.gpx', 'x'),
      size: 30e6,
      arrayBuffer: () => Promise.reject(new Error()),
    };
    expect(await readWaypointFile(huge, NOWHERE)).toEqual({
      ok: false,
      problem: 'The file is too large: found 30.0 MB, expected at most 20 MB.',
    });
  });

  test('a file that cannot be opened', async () => {
    const gone = { ...file('x.gpx', 'x'), arrayBuffer: () => Promise.reject(new Error('gone')) };
    expect(await readWaypointFile(gone, NOWHERE)).toMatchObject({
      problem: expect.stringMatching(/could not be opened/),
    });
  });
});

describe('latitude and longitude the wrong way round', () => {
  const trieste: GeoPoint = { latitudeDeg: 45.65, longitudeDeg: 13.77 };

  test('are said where the place in view makes it plain, and left as they are', () => {
    const reading = readWaypointText('13.7571, 45.6503\n45.6503, 13.7571', { near: trieste });
    expect(reading).toMatchObject({ ok: true });
    if (!reading.ok) return;
    expect(reading.value.waypoints[0]).toMatchObject({ latitudeDeg: 13.7571 });
    expect(reading.value.notes).toEqual([
      '1 of 2 would stand near the place in view with latitude and longitude swapped. They are left as they are: check them.',
    ]);
  });

  test('are not suspected of a place that is merely far away', () => {
    const reading = readWaypointText('-33.87, 151.2', { near: trieste });
    expect(reading.ok && reading.value.notes).toEqual([]);
  });

  test('are not suspected where either way round is near', () => {
    const near = { latitudeDeg: 30, longitudeDeg: 30.5 };
    const reading = readWaypointText('30.2, 30.1', { near });
    expect(reading.ok && reading.value.notes).toEqual([]);
  });
});
