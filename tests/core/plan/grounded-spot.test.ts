import { describe, expect, test } from 'vitest';

import { demoSpots } from '../../../src/core/plan/demo-spots.ts';
import { groundedSpot } from '../../../src/core/plan/grounded-spot.ts';
import { skylineOf } from '../../../src/core/plan/setup-light.ts';
import type { Spot } from '../../../src/core/plan/shoot.ts';
import type { Obstacle } from '../../../src/core/skyline/obstacle.ts';
import { skylineAltitude } from '../../../src/core/skyline/skyline.ts';
import { defined } from '../../support/defined.ts';

const pier = defined(demoSpots().pier);
const DATE = '2027-05-14';

/** 40 m of wall, 10 m high, 20 m south of the pier. */
const METRES_PER_DEGREE = 111_132;
const south = pier.latitudeDeg - 20 / METRES_PER_DEGREE;
const halfDeg = 20 / (METRES_PER_DEGREE * Math.cos((pier.latitudeDeg * Math.PI) / 180));
const wall: Obstacle = {
  kind: 'wall',
  closed: false,
  outline: [
    [pier.longitudeDeg - halfDeg, south],
    [pier.longitudeDeg + halfDeg, south],
  ],
  heightM: 10,
  crownBaseM: 0,
  passesInLeaf: 0,
  passesBare: 0,
  footElevationM: null,
};

const altitudeAt = (spot: Spot, azimuthDeg: number): number =>
  skylineAltitude(skylineOf(spot))(azimuthDeg);

describe('a spot’s skyline comes from terrain, obstacles and trace together', () => {
  test('a spot of which only a trace is known keeps its exact points', () => {
    expect(groundedSpot(pier, [], DATE)).toBe(pier);
  });

  test('a wall due south rises to atan((10 − camera height) / 20 m), the trace stays elsewhere', () => {
    const walled = groundedSpot(pier, [wall], DATE);
    const expectedDeg = (Math.atan((10 - pier.framing.cameraHeightM) / 20) * 180) / Math.PI;
    // A twentieth of a degree: the plane round the spot, and points left out on straight lines.
    expect(Math.abs(altitudeAt(walled, 180) - expectedDeg)).toBeLessThan(0.05);
    expect(Math.abs(altitudeAt(walled, 70) - altitudeAt(pier, 70))).toBeLessThan(0.05);
  });

  test('a higher ridge behind the wall is what counts there', () => {
    const terrain = {
      altitudesDeg: Array.from({ length: 360 }, (_, azimuthDeg) => (azimuthDeg === 180 ? 40 : 1)),
      origin: 'a file',
      dated: DATE,
      latitudeDeg: pier.latitudeDeg,
      longitudeDeg: pier.longitudeDeg,
      voidShare: 0,
    };
    expect(altitudeAt(groundedSpot({ ...pier, terrain }, [wall], DATE), 180)).toBeCloseTo(40, 1);
  });

  test('nothing of it is kept in the spot’s own trace', () => {
    expect(groundedSpot(pier, [wall], DATE).skyline).toEqual(pier.skyline);
  });
});
