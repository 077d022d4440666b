import { describe, expect, test } from 'vitest';

import { KIT_VERSION } from '../../../src/core/plan/kit.ts';
import { checkDocument } from '../../../src/core/plan/check-document.ts';
import { SHOOT, SHOOT_VERSION } from '../../../src/core/plan/shoot.ts';
import {
  KIT_STEPS,
  SHOOT_STEPS,
  upgradeDocument,
  type UpgradeStep,
} from '../../../src/core/plan/shoot-upgrades.ts';

const trimmed = (label: unknown): string => {
  if (typeof label !== 'string') throw new TypeError('no text');
  return label.trim();
};

/** A made-up past: metres were feet once, then the name was called a label. */
const steps: readonly UpgradeStep[] = [
  ({ heightFt, ...rest }) => ({ ...rest, heightM: Number(heightFt) * 0.3048 }),
  ({ label, ...rest }) => ({ ...rest, name: trimmed(label) }),
];

describe('upgrades step by step', () => {
  test('a document of version 1 passes through every step to the present', () => {
    const old = { version: 1, label: ' Pier ', heightFt: 10 };
    expect(upgradeDocument(old, steps)).toEqual({
      ok: true,
      value: { version: 3, name: 'Pier', heightM: 3.048 },
    });
    expect(old).toEqual({ version: 1, label: ' Pier ', heightFt: 10 });
  });

  test('one of version 2 takes the last step only', () => {
    expect(upgradeDocument({ version: 2, label: 'Pier', heightM: 3 }, steps)).toEqual({
      ok: true,
      value: { version: 3, name: 'Pier', heightM: 3 },
    });
  });

  test('one of the present version stays as it is', () => {
    const present = { version: 3, name: 'Pier' };
    expect(upgradeDocument(present, steps)).toEqual({ ok: true, value: present });
  });

  test('a newer one is refused with both versions', () => {
    expect(upgradeDocument({ version: 7 }, steps)).toEqual({
      ok: false,
      problem: { kind: 'newer', found: 7, readsUpTo: 3 },
    });
  });

  test.each([undefined, null, '1', 0, -1, 1.5, Number.NaN])('%j is no version', (version) => {
    expect(upgradeDocument({ version }, steps)).toEqual({
      ok: false,
      problem: { kind: 'no-version', found: version },
    });
  });

  test('one that is not what its version says is refused, not thrown', () => {
    expect(upgradeDocument({ version: 2, label: 5 }, steps)).toEqual({
      ok: false,
      problem: { kind: 'not-upgradable', from: 2, to: 3 },
    });
  });

  test('the steps lead to the present versions of shoot and kit', () => {
    expect([SHOOT_STEPS.length + 1, KIT_STEPS.length + 1]).toEqual([SHOOT_VERSION, KIT_VERSION]);
  });
});

describe('a shoot as version 1 wrote it opens with everything it said', () => {
  const written = {
    format: 'undersky-shoot',
    version: 1,
    id: 'old',
    title: 'Quay portraits',
    date: '2027-05-14',
    condition: 'clear',
    spots: {
      quay: {
        order: 'm',
        name: 'Quay',
        latitudeDeg: 45.65,
        longitudeDeg: 13.76,
        elevationM: 3,
        zone: 'Europe/Rome',
        framing: {
          bearingDeg: 300,
          tiltDeg: 6,
          focalLengthMm: 35,
          sensorWidthMm: 36,
          sensorHeightMm: 24,
          orientation: 'landscape',
          cameraDistanceM: 5,
          cameraHeightM: 1.4,
        },
        skyline: { a: { azimuthDeg: 70, altitudeDeg: 9 } },
        skylineOrigin: 'by eye',
        groundReflectance: 0.35,
        groundNote: 'pale stone',
        parkingNote: '',
        walkInMin: 4,
        permission: 'asked',
        permissionNote: 'port office',
        footTrafficNote: '',
        windNote: '',
        powerNote: '',
        hazardsNote: 'water',
      },
    },
    setups: {},
  };
  const upgraded = upgradeDocument(written, SHOOT_STEPS);
  const checked = upgraded.ok ? checkDocument(SHOOT, upgraded.value) : upgraded;

  test('it passes the present check', () => expect(checked).toMatchObject({ ok: true }));

  test('nothing it said is lost, and nothing is claimed of what it did not know', () => {
    expect(checked).toMatchObject({ value: { ...written, version: SHOOT_VERSION } });
    expect(checked).toMatchObject({
      value: { spots: { quay: { terrain: null, footTraffic: 'unknown', photos: {} } } },
    });
  });

  test('spots that are no map are left for the check to name', () => {
    const broken = upgradeDocument({ ...written, spots: 'none' }, SHOOT_STEPS);
    expect(broken.ok && checkDocument(SHOOT, broken.value).ok).toBe(false);
  });
});
