import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { csvRows, textCell } from '../../../src/exchange/waypoints/csv-cells.ts';
import { csv } from '../../../src/exchange/waypoints/csv.ts';
import type { WaypointReading } from '../../../src/exchange/waypoints/waypoint-format.ts';
import { expectSameWaypoints } from '../../support/expect-same-waypoints.ts';
import { waypointsArbitrary } from '../../support/waypoint-arbitrary.ts';

const reading = (text: string): WaypointReading => {
  const read = csv.readText(text, { near: null });
  if (!read.ok) throw new Error(read.problem);
  return read.value;
};

describe('cells, by the rules of RFC 4180, section 2', () => {
  test.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('%j', (text, rows) => {
    expect(csvRows(text, ',', 100)).toEqual(rows);
  });
});

describe('tables as programs and people write them', () => {
  test.each([
    ['commas', 'name,latitude,longitude\nPier,45.6503,13.7571'],
    ['semicolons and decimal commas', 'Name;Lat;Lng\r\nPier;45,6503;13,7571\r\n'],
    ['tabs', 'title\tlon\tlat\nPier\t13.7571\t45.6503'],
    ['a stated delimiter', 'sep=;\nlabel;y;x\nPier;45.6503;13.7571'],
    ['units in the names', 'Name,Latitude (deg),Longitude [°]\nPier,45.6503,13.7571'],
    ['one column for both', 'name,coordinates\nPier,"45.6503, 13.7571"'],
    ['one column in degrees, minutes, seconds', `name;location\nPier;45°39'01.08"N 13°45'25.56"E`],
    ['each angle in minutes', "name,lat,lon\nPier,45°39.018' N,13°45.426' E"],
    ['quotes round everything', '"name","latitude","longitude"\n"Pier","45.6503","13.7571"'],
    ['empty rows between', 'name,lat,lon\n\n,,\nPier,45.6503,13.7571\n\n'],
    ['no first row of names', 'Pier,45.6503,13.7571\n'],
  ])('%s', (_, text) => {
    const read = reading(text);
    expect(read.waypoints.map(({ name }) => name)).toEqual(['Pier']);
    expect(read.waypoints[0]?.latitudeDeg).toBeCloseTo(45.6503, 8);
    expect(read.waypoints[0]?.longitudeDeg).toBeCloseTo(13.7571, 8);
    expect(read.skipped).toEqual([]);
  });

  test('elevation, bearing, time and note come along', () => {
    expect(
      reading(
        'name,lat,lon,elevation_m,heading,time,notes\nPier,45.65,13.76,"3,5",215°,2027-05-01T18:30:00+02:00,"On the quay, paid"',
      ).waypoints[0],
    ).toEqual({
      name: 'Pier',
      latitudeDeg: 45.65,
      longitudeDeg: 13.76,
      elevationM: 3.5,
      bearingDeg: 215,
      // 16:30 UTC by its offset; from 1970 to 2027-05-01 there are 20,939 days.
      takenAtMs: (20_939 * 24 + 16.5) * 3_600_000,
      note: 'On the quay, paid',
    });
  });

  test('feet become metres (0.3048 m exactly), and that is said', () => {
    const read = reading('lat,lon,elevation (ft)\n45,13,1000');
    expect(read.waypoints[0]?.elevationM).toBeCloseTo(304.8, 9);
    expect(read.notes).toEqual([
      'Elevations are in feet by their column and were turned into metres.',
    ]);
  });
});

describe('what is wrong is said', () => {
  test('a row at a time', () => {
    const read = reading(
      'name,lat,lon\nGood,45,13\nSwapped,139.7,35.6\nFar,45,181\nNo number,NaN,13\nGrid,5055000,401000\nHalf,45,\n',
    );
    expect(read.waypoints.map(({ name }) => name)).toEqual(['Good']);
    expect(read.skipped).toEqual([
      {
        what: 'Swapped',
        why: 'Found a latitude of 139.7°; expected −90° to 90°, north positive. Latitude and longitude may be swapped.',
      },
      { what: 'Far', why: 'Found a longitude of 181°; expected −180° to 180°, east positive.' },
      { what: 'No number', why: 'Found “NaN” as latitude; expected a number of degrees.' },
      {
        what: 'Grid',
        why: 'Found 5055000, 401000, which looks like metres of a map projection; expected degrees of WGS 84.',
      },
      { what: 'Half', why: 'Found no longitude; expected latitude and longitude in degrees.' },
    ]);
  });

  test('an elevation, bearing or time that cannot be is left out and counted', () => {
    const read = reading('lat,lon,ele,bearing,time\n45,13,99999,400,yesterday\n45,14,NaN,-90,\n');
    expect(read.waypoints.map(({ elevationM, bearingDeg }) => [elevationM, bearingDeg])).toEqual([
      [null, null],
      [null, 270],
    ]);
    expect(read.notes).toEqual([
      '2 × elevation left out: expected metres from −450 to 9000.',
      '1 × bearing left out: expected degrees from −180 to 360.',
      '1 × time left out: expected a date and clock time with its offset from UTC.',
    ]);
  });

  test('without names of columns it says so, and refuses where the rows are no places either', () => {
    expect(reading('Pier,45.65,13.76').notes).toEqual([
      'No row names the columns: each row was read as a name and a coordinate.',
    ]);
    expect(csv.readText('first,second\nfoo,bar', { near: null })).toEqual({
      ok: false,
      problem:
        'Expected a first row that names its columns, such as name, latitude, longitude, elevation, bearing, note, found “first,second”.',
    });
  });

  test('a table with names but no row that can be used', () => {
    expect(csv.readText('lat,lon\n', { near: null })).toEqual({
      ok: false,
      problem: 'Expected waypoints, found none in the table.',
    });
  });
});

test('of two million rows the first 10,000 are read, and that is said', () => {
  const read = reading(`lat,lon\n${'45,13\n'.repeat(2_000_000)}`);
  expect(read.notes).toContain('Rows after the first 10000 are not read.');
});

describe('what leaves as CSV', () => {
  test('every row has as many cells as the first, lines end as RFC 4180 has them', () => {
    fc.assert(
      fc.property(waypointsArbitrary, (waypoints) => {
        const text = csv.write('Shoot', waypoints);
        const rows = csvRows(text.replace(/^\uFEFF/, ''), ',', 100);
        expect(rows.every((row) => row.length === 7)).toBe(true);
        expect(rows.length).toBe(waypoints.length + 1);
        expect(text.endsWith('\r\n')).toBe(true);
      }),
    );
  });

  test.each(['=HYPERLINK("x")', '+1', '-1+2', '@SUM(A1)', '\t=1', '＝1'])(
    'a text that a spreadsheet would compute does not begin as a formula: %j',
    (text) => {
      expect(textCell(text).replace(/^"/, '').charAt(0)).toBe("'");
    },
  );

  test('south and west keep their sign as numbers', () => {
    const [waypoint] = reading('lat,lon\n-33.5,-70.25').waypoints;
    expect(csv.write('x', waypoint === undefined ? [] : [waypoint])).toContain(',-33.5,-70.25,');
  });

  test('whatever is written is read back the same', () => {
    fc.assert(
      fc.property(waypointsArbitrary, (waypoints) => {
        expectSameWaypoints(reading(csv.write('Shoot', waypoints)).waypoints, waypoints);
      }),
    );
  });
});
