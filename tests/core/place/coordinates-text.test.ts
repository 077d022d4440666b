import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseCoordinates } from '../../../src/core/place/coordinates-text.ts';
import { formatCoordinates } from '../../../src/core/place/format-coordinates.ts';

const expectPoint = (text: string, latitudeDeg: number, longitudeDeg: number): void => {
  const result = parseCoordinates(text);
  expect(result, text).toMatchObject({ ok: true });
  if (!result.ok) return;
  expect(Math.abs(result.value.latitudeDeg - latitudeDeg), text).toBeLessThan(1e-9);
  expect(Math.abs(result.value.longitudeDeg - longitudeDeg), text).toBeLessThan(1e-9);
};

describe('published examples', () => {
  test('Flinders Peak in degrees, minutes and seconds (Geoscience Australia)', () => {
    expectPoint(
      '37°57′03.72030″S 144°25′29.52440″E',
      -(37 + 57 / 60 + 3.7203 / 3600),
      144 + 25 / 60 + 29.5244 / 3600,
    );
  });

  // RFC 5870, its own examples (from memory).
  test.each([
    ['geo:13.4125,103.8667', 13.4125, 103.8667],
    ['geo:48.2010,16.3695,183', 48.201, 16.3695],
    ['geo:48.198634,16.371648;crs=wgs84;u=40', 48.198634, 16.371648],
    ['geo:66,30;u=6.500;FOo=this%2dthat', 66, 30],
    ['geo:90,-22.43;crs=WGS84', 90, -22.43],
  ] as const)('%s', (text, latitudeDeg, longitudeDeg) => {
    expectPoint(text, latitudeDeg, longitudeDeg);
  });
});

describe('Trieste as people paste it', () => {
  test.each([
    '45.6503, 13.7571',
    '45.6503,13.7571',
    '45.6503 13.7571',
    '45.6503\t13.7571',
    '45.6503\n13.7571',
    '45.6503; 13.7571',
    '(45.6503, 13.7571)',
    '  45.6503 , 13.7571  ',
    '+45.6503 +13.7571',
    '+45.6503+013.7571/',
    '45,6503 13,7571',
    '45,6503, 13,7571',
    '45,6503;13,7571',
    '45,6503,13,7571',
    '45.6503° N, 13.7571° E',
    '45.6503°N 13.7571°E',
    '45.6503N 13.7571E',
    '45.6503n 13.7571e',
    'N45.6503 E13.7571',
    'N 45.6503°, E 13.7571°',
    'N45,6503 E13,7571',
    '13.7571 E, 45.6503 N',
    'E13.7571 N45.6503',
    'lat: 45.6503, lon: 13.7571',
    'lng=13.7571 lat=45.6503',
    'Latitude 45.6503 N, Longitude 13.7571 E',
    'North 45.6503 East 13.7571',
    "45°39.018'N 13°45.426'E",
    '45° 39,018′ N, 13° 45,426′ E',
    '45 39.018 13 45.426',
    'N 45 39.018 E 13 45.426',
    '45°39\'01.08"N 13°45\'25.56"E',
    '45°39′01.08″N 13°45′25.56″E',
    '45º39’01.08” N 13º45’25.56” E',
    "45˚39'01.08''N 13˚45'25.56''E",
    '45° 39′ 01,08″ N, 13° 45′ 25,56″ E',
    '45 39 01.08 N 13 45 25.56 E',
    '45 39 01.08, 13 45 25.56',
    '45°39\'1.08" 13°45\'25.56"',
    '45 deg 39 min 1.08 sec N, 13 deg 45 min 25.56 sec E',
    '45d39m01.08s N 13d45m25.56s E',
    '\u200E45.6503°\u00A0N, 13.7571°\u00A0E',
  ])('%s', (text) => {
    expectPoint(text, 45.6503, 13.7571);
  });
});

describe('south and west', () => {
  test.each([
    '-33.8688, -70.6693',
    '−33.8688 −70.6693',
    '–33.8688, –70.6693',
    '33.8688 S 70.6693 W',
    'W70.6693 S33.8688',
    '-33,8688 -70,6693',
    '-33,8688,-70,6693',
  ])('%s', (text) => {
    expectPoint(text, -33.8688, -70.6693);
  });

  test('minutes of a negative degree go the same way, also at zero', () => {
    expectPoint("-33°30' -70°15'", -33.5, -70.25);
    expectPoint("-0°30' 10°", -0.5, 10);
    expectPoint("S 0°30' W 0°15'", -0.5, -0.25);
  });
});

test('whole numbers with one comma are two numbers', () => {
  expectPoint('45,13', 45, 13);
  expectPoint('-45,-13', -45, -13);
});

describe('what is no place gets a sentence', () => {
  test.each([
    ['', /^nothing$/, /latitude and longitude/],
    ['   ', /^nothing$/, /latitude and longitude/],
    ['NaN', /NaN/, /such as 45/],
    ['NaN, NaN', /NaN/, /such as 45/],
    ['Infinity, 0', /Infinity/, /such as 45/],
    ['somewhere nice', /somewhere/, /such as 45/],
    ['45.6503', /one number/, /such as 45/],
    ['45,6503', /one number/, /such as 45/],
    ['95, 13', /a latitude of 95°/, /90° S and 90° N/],
    ['-90.0001, 13', /a latitude of -90.0001°/, /90° S and 90° N/],
    ['45, 190', /a longitude of 190°/, /180° W and 180° E/],
    ['geo:95,3', /a latitude of 95°/, /90° S and 90° N/],
    ['geo:45,13;crs=epsg:4326', /geo:45,13;crs=epsg:4326/, /such as 45/],
    ['13.7 N 45.6 N', /two latitudes/, /one latitude .* one longitude/],
    ['45.6 N 13.7', /one letter for two numbers/, /at each number or none/],
    ['-45 S 13 E', /both a sign and a letter/, /one of them/],
    ['45°61′ 13°', /61 minutes/, /0 to under 60/],
    ['45°30′60″ 13°', /60 seconds/, /0 to under 60/],
    ['45.5°30′ N 13° E', /45.5 degrees with more behind/, /last part only/],
    ['45 39 13', /3 numbers/, /such as 45/],
    ['1 2 3 4 5 6 7 8', /4 numbers/, /degrees °, minutes ′/],
    ['45″ 13°', /marks do not fit/, /degrees °, minutes ′/],
    ['O 13.7 N 45.6', /“O”/, /such as 45/],
    ['[13.7571, 45.6503]', /\[13.7571/, /such as 45/],
    ['<b>45</b>, 13', /“<b>45/, /such as 45/],
    [`45 ${'x'.repeat(500)}`, /^“x{39}…”$/, /such as 45/],
  ] as const)('“%s”', (text, found, expected) => {
    const result = parseCoordinates(text);
    if (result.ok) throw new Error(`read as ${formatCoordinates(result.value)}`);
    expect(result.problem.found).toMatch(found);
    expect(result.problem.expected).toMatch(expected);
  });

  test('any text at all gives a place on the globe or a sentence', () => {
    const piece = fc.constantFrom(
      '45',
      '13,5',
      '0.5',
      '-',
      '+',
      '°',
      "'",
      '"',
      'N',
      'E',
      'w',
      ',',
      ';',
      ' ',
      'lat',
      'geo:',
      '.',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece).map((pieces) => pieces.join('')),
        ),
        (text) => {
          const result = parseCoordinates(text);
          if (result.ok) {
            expect(Math.abs(result.value.latitudeDeg)).toBeLessThanOrEqual(90);
            expect(Math.abs(result.value.longitudeDeg)).toBeLessThanOrEqual(180);
          } else expect(result.problem.found.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('coordinates are written', () => {
  test('with four decimals and a letter', () => {
    expect(formatCoordinates({ latitudeDeg: 45.6503, longitudeDeg: 13.7571 })).toBe(
      '45.6503° N, 13.7571° E',
    );
    expect(formatCoordinates({ latitudeDeg: -33.86881, longitudeDeg: -70.6 })).toBe(
      '33.8688° S, 70.6000° W',
    );
  });

  test('without a south or west of nothing', () => {
    expect(formatCoordinates({ latitudeDeg: -0.00001, longitudeDeg: -0 })).toBe(
      '0.0000° N, 0.0000° E',
    );
  });

  test('so that they can be read back, to half of the last decimal', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (latitudeDeg, longitudeDeg) => {
          const result = parseCoordinates(formatCoordinates({ latitudeDeg, longitudeDeg }));
          if (!result.ok) throw new Error(result.problem.found);
          expect(Math.abs(result.value.latitudeDeg - latitudeDeg)).toBeLessThan(0.0000501);
          expect(Math.abs(result.value.longitudeDeg - longitudeDeg)).toBeLessThan(0.0000501);
        },
      ),
    );
  });
});
