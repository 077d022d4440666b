import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { addRings, shadowField, shadowsInView } from '../../../src/app/map/shadow-path.ts';
import type { Corner, Obstacle } from '../../../src/core/skyline/obstacle.ts';

const PLACE = { latitudeDeg: 45.65, longitudeDeg: 13.757 };
const RAD = Math.PI / 180;
const DATE = '2027-05-14';
const ZOOM = 17;
const WORLD_PX = 256 * 2 ** ZOOM;

/** EPSG:3857 as its definition has it, without anything of the map. */
const pixel = ([longitudeDeg, latitudeDeg]: Corner): readonly [number, number] => [
  ((longitudeDeg + 180) / 360) * WORLD_PX,
  (0.5 - Math.asinh(Math.tan(latitudeDeg * RAD)) / (2 * Math.PI)) * WORLD_PX,
];

const CENTRE = pixel([PLACE.longitudeDeg, PLACE.latitudeDeg]);
const view = {
  zoom: ZOOM,
  leftPx: CENTRE[0] - 400,
  topPx: CENTRE[1] - 300,
  widthPx: 800,
  heightPx: 600,
};

/** Metres of a pixel: 40,075 km · cos φ / 256 / 2^zoom; the ellipsoid's are within 0.4 %. */
const PIXEL_M = (40_075_017 * Math.cos(PLACE.latitudeDeg * RAD)) / WORLD_PX;

const at = (eastM: number, northM: number): Corner => [
  PLACE.longitudeDeg + eastM / 77_943,
  PLACE.latitudeDeg + northM / 111_143,
];

const house = (eastM: number, northM: number, heightM: number): Obstacle => ({
  kind: 'building',
  closed: true,
  outline: [
    at(eastM - 5, northM - 5),
    at(eastM + 5, northM - 5),
    at(eastM + 5, northM + 5),
    at(eastM - 5, northM + 5),
  ],
  heightM,
  crownBaseM: 0,
  passesInLeaf: 0,
  passesBare: 0,
  footElevationM: null,
});

/** Farthest pixels of all shadows of a view, from the view's middle. */
const reach = (obstacles: readonly Obstacle[], sun: Parameters<typeof shadowsInView>[1]['sun']) => {
  const shadows = shadowsInView(shadowField(obstacles), { sun, date: DATE, view });
  const x: number[] = [];
  const y: number[] = [];
  const put = (atX: number, atY: number): void => {
    x.push(atX - 400);
    y.push(300 - atY);
  };
  for (const group of shadows?.groups ?? []) addRings({ moveTo: put, lineTo: put }, group, view);
  return {
    east: Math.max(...x),
    west: Math.min(...x),
    north: Math.max(...y),
    south: Math.min(...y),
    count: x.length,
  };
};

describe('shadows in the pixels of the map', () => {
  test.each([
    { azimuthDeg: 180, towards: 'north', apparentAltitudeDeg: 30 },
    { azimuthDeg: 0, towards: 'south', apparentAltitudeDeg: 30 },
    { azimuthDeg: 270, towards: 'east', apparentAltitudeDeg: 45 },
    { azimuthDeg: 90, towards: 'west', apparentAltitudeDeg: 10 },
  ] as const)(
    'the sun at $azimuthDeg° and $apparentAltitudeDeg° throws them $towards, height times cotangent',
    ({ azimuthDeg, apparentAltitudeDeg, towards }) => {
      const ends = reach([house(0, 0, 10)], { azimuthDeg, apparentAltitudeDeg });
      const wantedM = 5 + 10 / Math.tan(apparentAltitudeDeg * RAD);
      // The ellipsoid's degrees against the sphere of the map.
      expect(Math.abs(ends[towards]) * PIXEL_M).toBeCloseTo(wantedM, 0);
      expect(Math.abs(ends[towards]) * PIXEL_M).toBeGreaterThan(wantedM * 0.995);
    },
  );

  test('a house out of view counts when its shadow reaches in, and not when it does not', () => {
    // The view is 800 × 0.83 m wide: its west edge lies 334 m from the middle.
    const outside = house(-360, 0, 20);
    expect(reach([outside], { azimuthDeg: 270, apparentAltitudeDeg: 20 }).count).toBeGreaterThan(0);
    expect(reach([outside], { azimuthDeg: 270, apparentAltitudeDeg: 60 }).count).toBe(0);
    expect(reach([outside], { azimuthDeg: 90, apparentAltitudeDeg: 20 }).count).toBe(0);
  });

  test('leaving out what does not reach the view changes nothing in it', () => {
    fc.assert(
      fc.property(
        fc.record({
          eastM: fc.double({ min: -900, max: 900, noNaN: true }),
          northM: fc.double({ min: -900, max: 900, noNaN: true }),
          azimuthDeg: fc.double({ min: 0, max: 359, noNaN: true }),
          apparentAltitudeDeg: fc.double({ min: 1, max: 80, noNaN: true }),
        }),
        ({ eastM, northM, ...sun }) => {
          const length = 15 / Math.tan(sun.apparentAltitudeDeg * RAD);
          const tipEastM = eastM - length * Math.sin(sun.azimuthDeg * RAD);
          const tipNorthM = northM - length * Math.cos(sun.azimuthDeg * RAD);
          const isSeen = [0, 0.25, 0.5, 0.75, 1].some((share) => {
            const [x, y] = pixel(
              at(eastM + share * (tipEastM - eastM), northM + share * (tipNorthM - northM)),
            );
            return Math.abs(x - CENTRE[0]) < 400 && Math.abs(y - CENTRE[1]) < 300;
          });
          if (isSeen) expect(reach([house(eastM, northM, 15)], sun).count).toBeGreaterThan(0);
        },
      ),
    );
  });

  test('with the sun down there are none', () => {
    const sun = { azimuthDeg: 300, apparentAltitudeDeg: -0.2 };
    expect(shadowsInView(shadowField([house(0, 0, 10)]), { sun, date: DATE, view })).toBeNull();
  });
});
