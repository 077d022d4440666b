import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { geoUri, readGeoUri } from '../../../src/exchange/waypoints/geo-uri.ts';

const sentence = (text: string): string => {
  const read = readGeoUri(text);
  if (read.ok) throw new Error(`read as ${read.value.latitudeDeg}, ${read.value.longitudeDeg}`);
  return read.problem;
};

describe('the examples of RFC 5870 (given from memory)', () => {
  test.each([
    ['geo:13.4125,103.8667', 13.4125, 103.8667, null, null],
    ['geo:48.2010,16.3695,183', 48.201, 16.3695, 183, null],
    ['geo:48.198634,16.371648;crs=wgs84;u=40', 48.198634, 16.371648, null, 40],
    ['geo:66,30;u=6.500;FOo=this%2dthat', 66, 30, null, 6.5],
    ['geo:66.0,30;u=6.5;foo=this-that', 66, 30, null, 6.5],
    ['geo:22.300,-118.44', 22.3, -118.44, null, null],
  ] as const)('%s', (text, latitudeDeg, longitudeDeg, elevationM, uncertaintyM) => {
    expect(readGeoUri(text)).toEqual({
      ok: true,
      value: { latitudeDeg, longitudeDeg, elevationM, uncertaintyM, name: null },
    });
  });

  test('all longitudes are one at a pole: geo:90,-22.43;crs=WGS84 is geo:90,46', () => {
    expect(readGeoUri('geo:90,-22.43;crs=WGS84')).toEqual(readGeoUri('geo:90,46'));
  });
});

test('an altitude below the sea and the way phones name a place', () => {
  expect(readGeoUri('geo:31.5,35.5,-430')).toMatchObject({ value: { elevationM: -430 } });
  expect(readGeoUri('geo:0,0?q=45.6503,13.7571(Pier%20head)')).toMatchObject({
    value: { latitudeDeg: 45.6503, longitudeDeg: 13.7571, name: 'Pier head' },
  });
});

test.each([
  ['geo:45,13;crs=epsg3857', /coordinate system “epsg3857”; expected WGS 84/],
  ['geo:95,13', /latitude of 95°; expected −90° to 90°.*may be swapped/],
  ['geo:45,181', /longitude of 181°; expected −180° to 180°/],
  ['geo:45', /Found “geo:45”; expected an address such as/],
  ['geo:NaN,NaN', /expected an address such as/],
  ['geo:1e3,5', /expected an address such as/],
  ['geo:0,0?q=harbour', /names a place by words only/],
])('%s is refused with what was found', (text, words) => {
  expect(sentence(text)).toMatch(words);
});

test('any place written as an address is read back, to half of 1e-7°', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -89.9, max: 89.9, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.option(fc.double({ min: -450, max: 9000, noNaN: true })),
      (latitudeDeg, longitudeDeg, elevationM) => {
        const read = readGeoUri(geoUri({ latitudeDeg, longitudeDeg, elevationM }));
        if (!read.ok) throw new Error(read.problem);
        expect(Math.abs(read.value.latitudeDeg - latitudeDeg)).toBeLessThan(5.1e-8);
        expect(Math.abs(read.value.longitudeDeg - longitudeDeg)).toBeLessThan(5.1e-8);
        expect(Math.abs((read.value.elevationM ?? 0) - (elevationM ?? 0))).toBeLessThan(0.0051);
      },
    ),
  );
});
