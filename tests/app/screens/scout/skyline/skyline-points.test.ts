import { expect, test } from 'vitest';

import {
  nextSkylinePoint,
  skylineRows,
} from '../../../../../src/app/screens/scout/skyline/skyline-points.ts';
import { addSkylinePoint } from '../../../../../src/core/plan/skyline-edits.ts';
import { demoShoot } from '../../../../../src/core/plan/demo-shoot.ts';
import { skylineOf } from '../../../../../src/core/plan/setup-light.ts';
import { skylineAltitude } from '../../../../../src/core/skyline/skyline.ts';

test('a new point stands in the widest gap and changes the skyline by less than its rounding', () => {
  const shoot = demoShoot();
  const pier = () => {
    const spot = shoot.spots['pier'];
    if (spot === undefined) throw new Error('the demo has a pier');
    return spot;
  };
  // From 180° to 345° nothing is noted: the middle is 262.5°.
  const point = nextSkylinePoint(pier());
  expect(Math.abs(point.azimuthDeg - 262.5)).toBeLessThanOrEqual(0.5);
  const before = skylineAltitude(skylineOf(pier()));
  addSkylinePoint('pier', 'new', point)(shoot);
  const after = skylineAltitude(skylineOf(pier()));
  for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 1)
    expect(Math.abs(after(azimuthDeg) - before(azimuthDeg))).toBeLessThanOrEqual(0.05 + 1e-9);
});

test('on a flat skyline the first point is on the bearing, at 0°', () => {
  const pier = demoShoot().spots['pier'];
  if (pier === undefined) throw new Error('the demo has a pier');
  expect(nextSkylinePoint({ ...pier, skyline: {} })).toEqual({ azimuthDeg: 300, altitudeDeg: 0 });
});

test('rows run from north round, whatever order they were added in', () => {
  const pier = demoShoot().spots['pier'];
  if (pier === undefined) throw new Error('the demo has a pier');
  const spot = {
    ...pier,
    skyline: { b: { azimuthDeg: 200, altitudeDeg: 1 }, a: { azimuthDeg: 20, altitudeDeg: 3 } },
  };
  expect(skylineRows(spot).map(([id]) => id)).toEqual(['a', 'b']);
});
