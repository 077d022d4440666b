import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  pointOfKey,
  roundedPoint,
} from '../../../../../src/app/screens/scout/sun-in-picture/picture-point.ts';
import {
  circleInPicture,
  edgeInPicture,
} from '../../../../../src/app/screens/scout/sun-in-picture/picture-shapes.ts';
import { projection } from '../../../../../src/core/sky/framing.ts';
import { separationDeg } from '../../../../support/reference-sky.ts';

const level = {
  bearingDeg: 300,
  tiltDeg: 0,
  focalLengthMm: 35,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
};

describe('the skyline’s silhouette', () => {
  test('a flat horizon is a straight line through the middle of a level picture', () => {
    const edge = edgeInPicture(level, []);
    expect(Math.max(...edge.map(({ yFraction }) => Math.abs(yFraction)))).toBeLessThan(1e-12);
    expect(edge[0]?.xFraction).toBeLessThan(-0.5);
    expect(edge.at(-1)?.xFraction).toBeGreaterThan(0.5);
  });
  test('tilted up by 10° the horizon lies 35 tan 10° mm under the middle', () => {
    const edge = edgeInPicture({ ...level, tiltDeg: 10 }, []);
    const middle = edge.find(({ xFraction }) => Math.abs(xFraction) < 1e-9);
    expect(middle?.yFraction).toBeCloseTo((-35 * Math.tan((10 * Math.PI) / 180)) / 24, 12);
  });
  test('a ridge of 8° stands 35 tan 8° mm over the middle, and higher towards the corners', () => {
    const edge = edgeInPicture(level, [{ azimuthDeg: 0, altitudeDeg: 8 }]);
    const middle = edge.find(({ xFraction }) => Math.abs(xFraction) < 1e-9);
    const expected = (35 * Math.tan((8 * Math.PI) / 180)) / 24;
    expect(middle?.yFraction).toBeCloseTo(expected, 12);
    expect(edge[100]?.yFraction).toBeGreaterThan(expected);
  });
});

describe('the circle of the tolerance', () => {
  test('every point of it is that far from the centre on the sky, anywhere in the picture', () => {
    const part = fc.double({ min: -0.5, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(
        part,
        part,
        fc.double({ min: -60, max: 89, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (xFraction, yFraction, tiltDeg, radiusDeg) => {
          const framing = { ...level, tiltDeg };
          const { toDirection } = projection(framing);
          const centre = { xFraction, yFraction };
          const circle = circleInPicture(framing, { centre, radiusDeg });
          expect(circle.length).toBeGreaterThan(40);
          for (const point of circle)
            expect(separationDeg(toDirection(point), toDirection(centre))).toBeCloseTo(
              radiusDeg,
              6,
            );
        },
      ),
      { numRuns: 50 },
    );
  });
  test('about straight up it is a circle too', () => {
    const circle = circleInPicture(
      { ...level, tiltDeg: 90 },
      { centre: { xFraction: 0, yFraction: 0 }, radiusDeg: 2 },
    );
    const radiusMm = 35 * Math.tan((2 * Math.PI) / 180);
    for (const { xFraction, yFraction } of circle)
      expect(Math.hypot(36 * xFraction, 24 * yFraction)).toBeCloseTo(radiusMm, 9);
  });
});

describe('keys move the point', () => {
  const from = { xFraction: 0.1, yFraction: -0.2 };
  test.each([
    ['ArrowLeft', false, { xFraction: 0.09, yFraction: -0.2 }],
    ['ArrowRight', true, { xFraction: 0.2, yFraction: -0.2 }],
    ['ArrowUp', false, { xFraction: 0.1, yFraction: -0.19 }],
    ['ArrowDown', true, { xFraction: 0.1, yFraction: -0.3 }],
    ['Home', false, { xFraction: 0, yFraction: 0 }],
    ['Enter', false, null],
  ])('%s, shift %s', (key, shiftKey, to) => {
    expect(pointOfKey(from, { key, shiftKey })).toEqual(to);
  });
  test('never out of the picture', () => {
    expect(roundedPoint({ xFraction: 0.7, yFraction: -3 })).toEqual({
      xFraction: 0.5,
      yFraction: -0.5,
    });
  });
});
