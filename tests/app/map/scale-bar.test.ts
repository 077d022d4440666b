import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { metresPerPixel } from '../../../src/app/map/ground-resolution.ts';
import { scaleBar } from '../../../src/app/map/scale-bar.ts';

describe('metres on the ground for a pixel of the map', () => {
  // 156,543.034 m · cos φ / 2^z is what web map services publish for Web Mercator; the row at 51.5°
  // is the check value computed from it: 23.792 m. Half a unit of the last digit.
  test.each([
    { latitudeDeg: 0, zoom: 0, metres: 156_543.034, within: 0.0005 },
    { latitudeDeg: 51.5, zoom: 12, metres: 23.792, within: 0.0005 },
    { latitudeDeg: 60, zoom: 10, metres: 76.437, within: 0.0005 },
    { latitudeDeg: -33.8688, zoom: 15, metres: 3.9667, within: 0.00005 },
  ])('are $metres at $latitudeDeg° and zoom $zoom', ({ latitudeDeg, zoom, metres, within }) => {
    expect(Math.abs(metresPerPixel({ latitudeDeg, zoom }) - metres)).toBeLessThanOrEqual(within);
  });

  test('follow the published rule everywhere on the map', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -85, max: 85, noNaN: true }),
        fc.integer({ min: 0, max: 20 }),
        (latitudeDeg, zoom) => {
          const rule = (156_543.034 * Math.cos((latitudeDeg * Math.PI) / 180)) / 2 ** zoom;
          expect(metresPerPixel({ latitudeDeg, zoom }) / rule).toBeCloseTo(1, 8);
        },
      ),
    );
  });
});

describe('the scale bar', () => {
  test('is a round length that fills its room by more than two fifths, drawn true', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 160_000, noNaN: true }), (scale) => {
        const { lengthM, widthPx } = scaleBar({ metresPerPixel: scale, mostPx: 120 });
        expect(widthPx).toBeLessThanOrEqual(120 + 1e-9);
        expect(widthPx).toBeGreaterThan(120 * 0.4 - 1e-9);
        expect(widthPx * scale).toBeCloseTo(lengthM, 5);
        expect(
          Number((lengthM / 10 ** Math.floor(Math.log10(lengthM) + 1e-9)).toFixed(6)),
        ).toSatisfy((lead: number) => [1, 2, 5].includes(lead));
      }),
    );
  });

  // By hand: 120 px of 1.67 m are 200.4 m.
  test.each([
    [1.67, '200 m'],
    [23.792, '2 km'],
    [0.149 * 0.7, '10 m'],
    [0.0042, '50 cm'],
    [156_543, '10000 km'],
  ])('at %s m a pixel reads %s', (scale, text) => {
    expect(scaleBar({ metresPerPixel: scale, mostPx: 120 }).text).toBe(text);
  });
});
