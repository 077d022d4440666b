import { describe, expect, test } from 'vitest';
import {
  boundsText,
  sizeText,
  spotsInText,
} from '../../../../src/app/screens/scout/map-file-text.ts';

const coast = { westDeg: 13.5, southDeg: 45.5, eastDeg: 14, northDeg: 45.9 };

describe('where a map archive lies', () => {
  test.each([
    [coast, '45.50 to 45.90° N, 13.50 to 14.00° E'],
    [
      { westDeg: -71.2, southDeg: -56, eastDeg: -66, northDeg: -52.5 },
      '52.50 to 56.00° S, 66.00 to 71.20° W',
    ],
    [
      { westDeg: -3, southDeg: -1, eastDeg: 2, northDeg: 4 },
      '1.00° S to 4.00° N, 3.00° W to 2.00° E',
    ],
  ])('%o reads %s', (bounds, text) => {
    expect(boundsText(bounds)).toBe(text);
  });

  test('is compared with the spots of the shoot', () => {
    const pier = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
    const far = { latitudeDeg: -54.8, longitudeDeg: -68.3 };
    expect(spotsInText(coast, [pier])).toBe('all spots of this shoot lie in it');
    expect(spotsInText(coast, [pier, far, far])).toBe('1 of 3 spots of this shoot lie in it');
    expect(spotsInText(coast, [far])).toBe('no spot of this shoot lies in it');
    expect(spotsInText(coast, [])).toBeNull();
  });
});

test.each([
  [12, '1 kB'],
  [834_000, '834 kB'],
  [12_340_000, '12.3 MB'],
])('%i bytes read %s', (bytes, text) => {
  expect(sizeText(bytes)).toBe(text);
});
