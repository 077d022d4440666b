import { describe, expect, test } from 'vitest';
import { bearingShort, bearingSpoken } from '../../../src/app/map/bearing-text.ts';
import { acrossPath, wedge, wedgePath } from '../../../src/app/map/wedge.ts';

describe('the wedge of a framing', () => {
  test('a camera facing east with a 60° field has its edges at 60° and 120° from north', () => {
    const { left, right, handle } = wedge({ bearingDeg: 90, horizontalFovDeg: 60, edgePx: 100 });
    // Plane trigonometry: sin 60° = 0.8660, cos 60° = 0.5.
    expect(left.x).toBeCloseTo(86.6, 1);
    expect(left.y).toBeCloseTo(-50, 6);
    expect(right.x).toBeCloseTo(86.6, 1);
    expect(right.y).toBeCloseTo(50, 6);
    expect(handle.x).toBeCloseTo(86.6, 1);
    expect(handle.y).toBeCloseTo(0, 6);
  });

  test('the angle between its edges is the field of view, whatever the bearing', () => {
    for (const bearingDeg of [0, 45, 179, 300, 359.5]) {
      const { left, right } = wedge({ bearingDeg, horizontalFovDeg: 54.4, edgePx: 120 });
      const cosine = (left.x * right.x + left.y * right.y) / 120 ** 2;
      expect((Math.acos(cosine) * 180) / Math.PI).toBeCloseTo(54.4, 6);
    }
  });

  test('the line at the subject lies at its share of the depth', () => {
    const shape = wedge({ bearingDeg: 0, horizontalFovDeg: 90, edgePx: Math.SQRT2 * 100 });
    expect(wedgePath(shape)).toBe('M0,0L-100.0,-100.0L100.0,-100.0Z');
    expect(acrossPath(shape, 40)).toBe('M-40.0,-40.0L40.0,-40.0');
  });
});

describe('a bearing in words', () => {
  test.each([
    { bearingDeg: 300, short: '300° WNW', spoken: '300 degrees, west-north-west' },
    { bearingDeg: 0, short: '0° N', spoken: '0 degrees, north' },
    { bearingDeg: 359.7, short: '0° N', spoken: '0 degrees, north' },
    { bearingDeg: 135, short: '135° SE', spoken: '135 degrees, south-east' },
    { bearingDeg: 191, short: '191° S', spoken: '191 degrees, south' },
    { bearingDeg: 192, short: '192° SSW', spoken: '192 degrees, south-south-west' },
  ])('$bearingDeg° is $spoken', ({ bearingDeg, short, spoken }) => {
    expect(bearingShort(bearingDeg)).toBe(short);
    expect(bearingSpoken(bearingDeg)).toBe(spoken);
  });
});
