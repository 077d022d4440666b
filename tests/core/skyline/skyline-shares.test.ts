import { expect, test } from 'vitest';

import {
  bySector,
  byTrace,
  type SkylineSource,
} from '../../../src/core/skyline/combined-skyline.ts';
import { skylineMakers, skylineShares } from '../../../src/core/skyline/skyline-shares.ts';

const from =
  (fromDeg: number, toDeg: number, altitudeDeg: number): SkylineSource =>
  (azimuthDeg) =>
    azimuthDeg >= fromDeg && azimuthDeg < toDeg ? altitudeDeg : -Infinity;

test('each source decides the azimuths where it is highest: halves, quarters, nothing', () => {
  const terrain = from(0, 360, 2);
  const wall = from(90, 180, 10);
  expect(skylineShares([terrain, wall])).toEqual([0.75, 0.25]);
  expect(skylineShares([terrain, wall, byTrace([])])).toEqual([0.75, 0.25, 0]);
  expect(skylineShares([from(0, 180, 1), wall])).toEqual([0.25, 0.25]);
});

test('where two are level the earlier one has made it', () => {
  expect(skylineShares([from(0, 360, 5), from(0, 360, 5)])).toEqual([1, 0]);
});

test('the stretches run from north to north without a gap', () => {
  expect(skylineMakers([from(0, 360, 2), from(90, 180, 10)])).toEqual([
    { fromDeg: 0, toDeg: 90, index: 0 },
    { fromDeg: 90, toDeg: 180, index: 1 },
    { fromDeg: 180, toDeg: 360, index: 0 },
  ]);
  expect(skylineMakers([])).toEqual([{ fromDeg: 0, toDeg: 360, index: -1 }]);
});

test('a sector of the terrain is centred on its degree', () => {
  const altitudesDeg = Array.from({ length: 360 }, (_, sector) => (sector === 90 ? 20 : 0));
  const made = skylineMakers([bySector(altitudesDeg), from(0, 360, 10)]).filter(
    ({ index }) => index === 0,
  );
  expect(made).toEqual([{ fromDeg: 89.5, toDeg: 90.5, index: 0 }]);
});
