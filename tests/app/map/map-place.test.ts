import { describe, expect, test } from 'vitest';
import { boxOfPlaces } from '../../../src/app/map/box-of-places.ts';
import { nearestCopyDeg, placeFromMap, stepFrom } from '../../../src/app/map/map-place.ts';
import {
  latitudeAt,
  longitudeAt,
  mercatorX,
  mercatorY,
} from '../../../src/app/map/web-mercator.ts';

describe('Web Mercator agrees with the worked example of EPSG:3857 (IOGP 373-7-2)', () => {
  // 24°22′54.433″ N, 100°20′00.000″ W → E −11169055.58 m, N 2800000.00 m on a sphere of 6378137 m.
  const worldM = 2 * Math.PI * 6_378_137;
  const latitudeDeg = 24 + 22 / 60 + 54.433 / 3600;
  const longitudeDeg = -(100 + 20 / 60);

  test('to a centimetre', () => {
    expect((mercatorX(longitudeDeg) / 256 - 0.5) * worldM).toBeCloseTo(-11_169_055.58, 2);
    // The latitude is written to a thousandth of a second, 3 cm.
    expect(Math.abs((0.5 - mercatorY(latitudeDeg) / 256) * worldM - 2_800_000)).toBeLessThan(0.04);
  });

  test('there and back', () => {
    expect(longitudeAt(mercatorX(longitudeDeg))).toBeCloseTo(longitudeDeg, 10);
    expect(latitudeAt(mercatorY(latitudeDeg))).toBeCloseTo(latitudeDeg, 10);
  });

  test('latitudes beyond the square stand on its edge', () => {
    expect(mercatorY(89)).toBe(0);
    expect(mercatorY(-90)).toBe(256);
  });
});

const at = (longitudeDeg: number) => ({ latitudeDeg: 50, longitudeDeg });

describe('the date line', () => {
  test('179.9° W is drawn beside 179.9° E, not a world away', () => {
    expect(nearestCopyDeg(-179.9, 179.9)).toBeCloseTo(180.1, 9);
    expect(nearestCopyDeg(179.9, -179.9)).toBeCloseTo(-180.1, 9);
    expect(nearestCopyDeg(13.7, 0)).toBeCloseTo(13.7, 9);
  });

  test('a place read off a copy of the world has its true longitude', () => {
    expect(placeFromMap({ lat: 10, lng: 180.25 }).longitudeDeg).toBeCloseTo(-179.75, 7);
    expect(placeFromMap({ lat: 10, lng: -541 }).longitudeDeg).toBeCloseTo(179, 7);
  });

  test('a step east over it comes out in the west', () => {
    const there = stepFrom({ latitudeDeg: 0, longitudeDeg: 179.99999 }, 90, 10);
    expect(there.longitudeDeg).toBeLessThan(-179.9999);
  });

  test('the box of places on both sides is narrow', () => {
    const box = boxOfPlaces([
      { latitudeDeg: -16, longitudeDeg: 179.9 },
      { latitudeDeg: -17, longitudeDeg: -179.9 },
    ]);
    expect(box?.westDeg).toBeCloseTo(179.9, 9);
    expect(box?.eastDeg).toBeCloseTo(180.1, 9);
    expect(box?.southDeg).toBe(-17);
    expect(box?.northDeg).toBe(-16);
  });

  test('the box of places far from it does not cross it', () => {
    const box = boxOfPlaces([at(13), at(-3), at(5)]);
    expect(box?.westDeg).toBe(-3);
    expect(box?.eastDeg).toBe(13);
    expect(boxOfPlaces([])).toBeNull();
    expect(boxOfPlaces([at(7)])?.eastDeg).toBe(7);
  });
});

describe('a step of the arrow keys', () => {
  // The mean length of a degree of latitude at 45° is 111,132 m (WGS 84, NGA.STND.0036).
  test('1 m north is 1/111,132 of a degree there', () => {
    const { latitudeDeg } = stepFrom({ latitudeDeg: 45, longitudeDeg: 13 }, 0, 1);
    // Stored to 1e-7 degree, a centimetre.
    expect(Math.abs((latitudeDeg - 45) * 111_132 - 1)).toBeLessThan(0.01);
  });
});
