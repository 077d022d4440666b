import { expect, test } from 'vitest';

import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import {
  PLAIN_WAYPOINT_LINES,
  waypointsOf,
  WAYPOINT_LINES,
} from '../../../src/core/plan/waypoints-of.ts';
import { defined } from '../../support/defined.ts';

const shoot = demoShoot();
const pier = defined(shoot.spots['pier']);
const withContact = {
  spots: {
    pier: {
      ...pier,
      permission: 'granted' as const,
      permissionNumber: 'A-17',
      hazards: { water: true, traffic: false, height: true, lonely: false },
      contacts: { one: { order: 'n', role: 'harbour guard', note: 'gate, mornings' } },
    },
  },
};

test('spots leave in their order with name, place, elevation and the bearing of the framing', () => {
  expect(
    waypointsOf(shoot, { lines: [] }).map(({ name, elevationM, bearingDeg, note }) => [
      name,
      elevationM,
      bearingDeg,
      note,
    ]),
  ).toEqual([
    ['Pier head', 3, 300, ''],
    ['Lighthouse terrace', 64, 25, ''],
    ['Karst edge', 318, 150, ''],
    ['Warehouse arches', 4, 190, ''],
  ]);
});

test('the note holds the lines wanted, and leaves empty ones out', () => {
  expect(waypointsOf(withContact, { lines: WAYPOINT_LINES })[0]?.note.split('\n')).toEqual([
    'Camera: faces 300° from true north, 35 mm',
    'Way in: On the quay, paid, 4 min on foot',
    'Ground: Pale stone, wet at the edge',
    'Foot traffic: Walkers until dark; keep a passage open',
    'Wind: Open to wind from every side',
    'Hazards: water, height, Water on three sides: nobody steps back without a spotter',
    'Permission: granted, Port office, number A-17',
    'Contacts: harbour guard, gate, mornings',
  ]);
});

test('permission and contacts leave only where they are asked for', () => {
  const note = defined(waypointsOf(withContact, { lines: PLAIN_WAYPOINT_LINES })[0]).note;
  expect(note).toContain('Way in: ');
  expect(note).not.toMatch(/A-17|Port office|harbour guard/);
});
