import { describe, expect, test } from 'vitest';
import { compassText, declinationText } from '../../../src/app/map/declination-text.ts';
import { groundLine } from '../../../src/app/map/ground-line.ts';
import { measuredText } from '../../../src/app/map/measured-text.ts';
import { groundVector } from '../../../src/core/place/geodesy.ts';

describe('a measured way in words', () => {
  test.each([
    [{ distanceM: 0.2, bearingDeg: 12 }, '0 m'],
    [{ distanceM: 412.4, bearingDeg: 300.43 }, '412 m, bearing 300.4° WNW'],
    [{ distanceM: 3421, bearingDeg: 359.98 }, '3.42 km, bearing 0.0° N'],
    [{ distanceM: 99_600, bearingDeg: 90 }, '100 km, bearing 90.0° E'],
    [{ distanceM: 5_585_234, bearingDeg: 51.4 }, '5,585 km, bearing 51.4° NE'],
  ])('%o reads %s', (way, text) => {
    expect(measuredText(way)).toBe(text);
  });
});

describe('on a compass', () => {
  const east = { declinationDeg: 3.64, spreadDeg: 0.46, decimalYear: 2027.37, model: 'The model' };

  test('an east declination is taken off the true bearing, past north too', () => {
    expect(compassText(300, east)).toBe('296.4°');
    expect(compassText(2, east)).toBe('358.4°');
    expect(compassText(300, { ...east, declinationDeg: -11.1 })).toBe('311.1°');
    expect(compassText(359.99, { ...east, declinationDeg: 0 })).toBe('0.0°');
  });

  test('the declination says its side, its spread, its model and its year', () => {
    expect(declinationText(east)).toBe('declination 3.6° east ± 0.5°, The model for 2027.4');
    expect(declinationText({ ...east, declinationDeg: -0.04 })).toBe(
      'declination 0.0° ± 0.5°, The model for 2027.4',
    );
    expect(declinationText({ ...east, declinationDeg: -11.1 })).toContain('11.1° west');
  });
});

describe('the line of a measured way', () => {
  // Karney 2013, table 2 (test case of the GeographicLib documentation): JFK to Singapore goes
  // close by the pole. Here only that the line is the shortest way: its parts add up to it.
  test('adds up to the distance, and bends over the pole between two far cities', () => {
    const jfk = { latitudeDeg: 40.6, longitudeDeg: -73.8 };
    const changi = { latitudeDeg: 1.36, longitudeDeg: 103.99 };
    const line = groundLine(jfk, changi);
    const parts = line
      .slice(1)
      .map((point, index) => groundVector(line[index] ?? jfk, point).distanceM);
    const whole = parts.reduce((sum, part) => sum + part, 0);
    expect(Math.abs(whole - groundVector(jfk, changi).distanceM)).toBeLessThan(0.01);
    expect(Math.max(...line.map(({ latitudeDeg }) => latitudeDeg))).toBeGreaterThan(80);
  });

  test('crosses the date line without a jump', () => {
    const line = groundLine(
      { latitudeDeg: -17, longitudeDeg: 179 },
      { latitudeDeg: -17, longitudeDeg: -179 },
    );
    expect(line.at(-1)?.longitudeDeg).toBeCloseTo(181, 9);
    for (const [index, { longitudeDeg }] of line.entries())
      expect(Math.abs(longitudeDeg - (line[index - 1]?.longitudeDeg ?? 179))).toBeLessThan(1);
  });

  test('is drawn straight within a town', () => {
    const from = { latitudeDeg: 45.65, longitudeDeg: 13.757 };
    const to = { latitudeDeg: 45.66, longitudeDeg: 13.766 };
    expect(groundLine(from, to)).toEqual([from, to]);
  });
});
