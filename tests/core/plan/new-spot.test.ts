import { expect, test } from 'vitest';

import { addSpot } from '../../../src/core/plan/edits.ts';
import { checkDocument } from '../../../src/core/plan/check-document.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { newSpot } from '../../../src/core/plan/new-spot.ts';
import { inOrder } from '../../../src/core/plan/order-key.ts';
import { SHOOT } from '../../../src/core/plan/shoot.ts';

const known = {
  point: { latitudeDeg: 45.66, longitudeDeg: 13.77 },
  name: null,
  zone: 'Europe/Rome',
  elevationM: 12,
  framing: null,
};

test('a new spot is numbered, stands last and makes a valid shoot', () => {
  const shoot = demoShoot();
  const spot = newSpot(shoot, known);
  expect(spot.name).toBe('Spot 5');
  addSpot('new', spot)(shoot);
  expect(inOrder(shoot.spots).at(-1)?.[0]).toBe('new');
  expect(checkDocument(SHOOT, shoot).ok).toBe(true);
  expect(newSpot(shoot, known).name).toBe('Spot 6');
});

test('without a spot to copy, the camera faces the sunset', () => {
  // Sunset azimuth from cos A = (sin δ − sin φ sin h) / (cos φ cos h): δ 18.6° on 14 May, h −0.83°.
  const rad = Math.PI / 180;
  const cosA =
    (Math.sin(18.6 * rad) - Math.sin(45.66 * rad) * Math.sin(-0.83 * rad)) /
    (Math.cos(45.66 * rad) * Math.cos(-0.83 * rad));
  const bearing = 360 - Math.acos(cosA) / rad;
  expect(Math.abs(newSpot(demoShoot(), known).framing.bearingDeg - bearing)).toBeLessThan(1);
});

test('in polar summer, where the sun does not set, it faces west', () => {
  const shoot = { ...demoShoot(), date: '2027-06-21' };
  const point = { latitudeDeg: 78.2, longitudeDeg: 15.6 };
  expect(newSpot(shoot, { ...known, point, zone: 'Arctic/Longyearbyen' }).framing.bearingDeg).toBe(
    270,
  );
});
