import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { changeEdit, fixEdit, type SetupChange } from '../../../src/core/plan/setup-fix.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Setup } from '../../../src/core/plan/setup-schema.ts';
import { defined } from '../../support/defined.ts';

const setup = (): Setup => defined(demoShoot().setups.quartet);
const key = setup().lights.key;
const fill = setup().lights.fill;

const CHANGES: readonly (readonly [SetupChange, Partial<Setup>])[] = [
  [
    { kind: 'distance', lightIds: ['key', 'fill'], distanceM: 1.9, closer: true },
    {
      lights: {
        key: { ...defined(key), distanceM: 1.9 },
        fill: { ...defined(fill), distanceM: 1.9 },
      },
    },
  ],
  [
    { kind: 'part-on', lightId: 'key', part: 'grid' },
    { lights: { key: { ...defined(key), grid: true }, fill: defined(fill) } },
  ],
  [
    { kind: 'part-off', lightId: 'fill', part: 'diffuser' },
    { lights: { key: defined(key), fill: { ...defined(fill), diffuser: false } } },
  ],
  [
    {
      kind: 'modifier',
      lightId: 'fill',
      modifierId: 'octabox',
      light: { diffuser: true, baffle: false, grid: false },
    },
    {
      lights: {
        key: defined(key),
        fill: { ...defined(fill), modifierId: 'octabox', diffuser: true },
      },
    },
  ],
  [
    { kind: 'heads', lightId: 'fill', headCount: 2, owned: false },
    { lights: { key: defined(key), fill: { ...defined(fill), headCount: 2 } } },
  ],
  [{ kind: 'leave-out', lightIds: ['fill'] }, { lights: { key: defined(key) } }],
  [{ kind: 'camera', cameraId: 'second', syncShutterS: 1 / 500 }, { cameraId: 'second' }],
  [{ kind: 'lens', lensId: 'lens-85', syncShutterS: 1 / 500 }, { lensId: 'lens-85' }],
  [{ kind: 'clock', clock: '20:31', later: true }, { startClock: '20:31' }],
  [{ kind: 'hold', holdStops: 1.1, deeper: false }, { holdStops: 1.1 }],
  [{ kind: 'unlit-under', unlitUnderStops: 1.2 }, { unlitUnderStops: 1.2 }],
  [{ kind: 'shade' }, { shaded: true }],
  [{ kind: 'tripod' }, { tripod: true }],
  [
    { kind: 'bearing', bearingDeg: 15, sunBehind: false },
    { framing: { ...defined(demoShoot().spots.pier).framing, bearingDeg: 15 } },
  ],
  [
    { kind: 'tilt', tiltDeg: 12 },
    { framing: { ...defined(demoShoot().spots.pier).framing, tiltDeg: 12 } },
  ],
  [
    { kind: 'focal-length', focalLengthMm: 70, cameraDistanceM: 10.2 },
    {
      framing: {
        ...defined(demoShoot().spots.pier).framing,
        focalLengthMm: 70,
        cameraDistanceM: 10.2,
      },
    },
  ],
];

describe('the edit of a change', () => {
  test.each(CHANGES)('%j changes that and nothing else', (change, expected) => {
    const edited = produce(demoShoot(), defined(changeEdit('quartet', change)));
    expect(edited.setups.quartet).toEqual({ ...setup(), ...expected });
    expect({ ...edited, setups: { ...edited.setups, quartet: null } }).toEqual({
      ...demoShoot(),
      setups: { ...demoShoot().setups, quartet: null },
    });
  });

  test.each([
    ['shutter', { pinnedShutterS: 1 / 60 }, { pinnedShutterS: null }],
    ['aperture', { pinnedFNumber: 4 }, { pinnedFNumber: null }],
    ['iso', { pinnedIso: 400 }, { pinnedIso: null }],
    ['filters', { pinnedFilterIds: { 'nd-2': true as const } }, { pinnedFilterIds: null }],
  ] as const)('giving up the pinned %s frees it alone', (pin, pinned, free) => {
    const before = produce(demoShoot(), (shoot) => {
      Object.assign(defined(shoot.setups.quartet), pinned);
    });
    const change: SetupChange = { kind: 'unpin', pin, lightIds: [], costsStops: 1 };
    const after = produce(before, defined(changeEdit('quartet', change)));
    expect(after.setups.quartet).toEqual({ ...before.setups.quartet, ...free });
  });

  test('giving up a pinned power frees that light’s alone', () => {
    const before = produce(demoShoot(), (shoot) => {
      for (const light of Object.values(defined(shoot.setups.quartet).lights))
        light.pinnedPowerStops = -2;
    });
    const change: SetupChange = { kind: 'unpin', pin: 'power', lightIds: ['fill'], costsStops: 1 };
    const { lights } = defined(
      produce(before, defined(changeEdit('quartet', change))).setups.quartet,
    );
    expect(lights.fill?.pinnedPowerStops).toBeNull();
    expect(lights.key?.pinnedPowerStops).toBe(-2);
  });

  test('what the kit does not hold has no edit, and a fix with one such half has none', () => {
    const tilt: SetupChange = { kind: 'tilt', tiltDeg: 12 };
    for (const change of [
      { kind: 'sync-shutter', shutterS: 1 / 1000 },
      { kind: 'polariser', upToStops: 1 },
      { kind: 'nd', stops: 4 },
      { kind: 'head-nd', lightIds: ['key'], stops: 2 },
    ] as const) {
      expect(changeEdit('quartet', change)).toBeNull();
      const fix = { changes: [tilt, change], inHandStops: 0, leastInHandStops: 0 };
      expect(fixEdit('quartet', fix)).toBeNull();
    }
  });

  test('a pair makes both changes', () => {
    const changes: readonly SetupChange[] = [
      { kind: 'shade' },
      { kind: 'hold', holdStops: 1, deeper: false },
    ];
    const edit = fixEdit('quartet', { changes, inHandStops: 0, leastInHandStops: 0 });
    expect(produce(demoShoot(), defined(edit)).setups.quartet).toMatchObject({
      shaded: true,
      holdStops: 1,
    });
  });
});
