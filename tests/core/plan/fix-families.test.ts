import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { editLight, editSetup } from '../../../src/core/plan/edits.ts';
import { fixFamilies, type FixFamily } from '../../../src/core/plan/fix-families.ts';
import { headWithModifier } from '../../../src/core/plan/modified-head.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import type { SetupChange } from '../../../src/core/plan/setup-fix.ts';
import type { RecipeProblem } from '../../../src/core/strobe/recipe.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';

const families = (
  asked: SetupCaseInput,
  kind: RecipeProblem['kind'],
  lights: readonly number[] = [0],
): readonly FixFamily[] =>
  fixFamilies({ asked, base: caseOfMinute(asked), problem: { kind, shortByStops: 1, lights } });

const ofKind = <Kind extends SetupChange['kind']>(
  found: readonly FixFamily[],
  kind: Kind,
): readonly (SetupChange & { kind: Kind })[] =>
  found.flatMap((family) =>
    family.filter((change): change is SetupChange & { kind: Kind } => change.kind === kind),
  );

describe('for a sky above the reach', () => {
  const asked = demoMinute(
    'viola',
    '15:00',
    'clear',
    editLight('viola', 'key', { diffuser: true, baffle: true, grid: false }),
  );
  const found = families(asked, 'sky-above-reach');

  test('diffuser and baffle come off the named light, one by one, and only those that are on', () => {
    expect(ofKind(found, 'part-off').map(({ lightId, part }) => `${lightId} ${part}`)).toEqual([
      'key baffle',
      'key diffuser',
    ]);
    expect(ofKind(families(asked, 'sky-above-reach', [1]), 'part-off')).toEqual([]);
  });

  test('other modifiers give more light than the one it has, the softest first', () => {
    const base = caseOfMinute(asked);
    const { head, output, light } = defined(base.sources[0]);
    const level = ({ guideNumberM, lossStops }: typeof output): number =>
      2 * Math.log2(guideNumberM) - lossStops;
    const levels = ofKind(found, 'modifier').map(({ modifierId, light: parts }) =>
      level(
        headWithModifier({
          head,
          modifier: defined(asked.kit.modifiers[modifierId]),
          modifierId,
          gel: null,
          light: parts,
        }),
      ),
    );
    expect(levels.length).toBeGreaterThan(0);
    expect(levels).toEqual(levels.toSorted((one, other) => one - other));
    for (const one of levels) expect(one).toBeGreaterThan(level(output));
    expect(ofKind(found, 'modifier').map(({ modifierId }) => modifierId)).not.toContain(
      light.modifierId,
    );
  });

  test('the camera turns to either side in ever larger steps, tilts up, and uses longer lenses the lens has', () => {
    const { bearingDeg, tiltDeg, focalLengthMm, cameraDistanceM } = caseOfMinute(asked).framing;
    const turns = ofKind(found, 'bearing').filter(({ sunBehind }) => !sunBehind);
    const away = turns.map((turn) => Math.abs(((turn.bearingDeg - bearingDeg + 540) % 360) - 180));
    expect(away).toEqual(away.toSorted((one, other) => one - other));
    expect(Math.min(...away)).toBe(5);
    const tilts = ofKind(found, 'tilt').map((change) => change.tiltDeg);
    expect(tilts[0]).toBe(tiltDeg + 1);
    expect(Math.max(...tilts)).toBe(30);
    const lengths = ofKind(found, 'focal-length');
    for (const change of lengths) {
      expect(change.focalLengthMm).toBeGreaterThan(focalLengthMm);
      expect(change.focalLengthMm).toBeLessThanOrEqual(70);
      // The subject stays as large: distance grows with focal length, to 0.1 m.
      const wanted = (cameraDistanceM * change.focalLengthMm) / focalLengthMm;
      expect(Math.abs(change.cameraDistanceM - wanted)).toBeLessThanOrEqual(0.05 + 1e-9);
    }
    expect(lengths.length).toBeGreaterThan(3);
  });

  test('a low sun can be hidden behind the subject, a high one and one that is down cannot', () => {
    const hidden = (clock: string): number => {
      const minute = demoMinute('viola', clock, 'clear');
      return ofKind(families(minute, 'sky-above-reach'), 'bearing').filter((turn) => turn.sunBehind)
        .length;
    };
    expect([hidden('19:00'), hidden('13:00'), hidden('21:30')]).toEqual([1, 0, 0]);
    const turned = defined(
      ofKind(families(demoMinute('viola', '19:00', 'clear'), 'sky-above-reach'), 'bearing').find(
        (turn) => turn.sunBehind,
      ),
    );
    const { azimuthDeg } = caseOfMinute(demoMinute('viola', '19:00', 'clear')).light.sun;
    expect(Math.abs(turned.bearingDeg - azimuthDeg)).toBeLessThanOrEqual(0.5);
  });
});

const up = (asked: SetupCaseInput): number | undefined =>
  ofKind(families(asked, 'sky-above-reach'), 'polariser')[0]?.upToStops;

const turned = (offSunDeg: number, condition: 'clear' | 'haze' | 'broken-cloud' = 'clear') => {
  const plain = demoMinute('viola', '19:20', condition);
  const { azimuthDeg, apparentAltitudeDeg } = caseOfMinute(plain).light.sun;
  return demoMinute('viola', '19:20', condition, (shoot) => {
    const setup = defined(shoot.setups.viola);
    const framing = { ...defined(shoot.spots.arches).framing };
    setup.framing = {
      ...framing,
      bearingDeg: (azimuthDeg + offSunDeg) % 360,
      tiltDeg: apparentAltitudeDeg,
    };
  });
};

describe('a polariser', () => {
  test('darkens most at a right angle to the sun, 2 stops, and nothing toward it', () => {
    // Near the horizon a turn of 90° is about 90° of arc. Practice: 1 to 2 stops more on a clear sky.
    expect(up(turned(90))).toBeCloseTo(2, 1);
    expect(up(turned(0))).toBeUndefined();
  });

  test('at 45° Rayleigh’s sin² / (1 + cos²) leaves a third of the polarised light: 0.4 stop', () => {
    // A third of three quarters: −log2(1 − 0.25) = 0.415.
    expect(Math.abs(defined(up(turned(46))) - 0.42)).toBeLessThanOrEqual(0.051);
  });

  test('does nothing under cloud, after sunset, or when none is owned', () => {
    expect(up(turned(90, 'haze'))).toBeDefined();
    expect(up(turned(90, 'broken-cloud'))).toBeUndefined();
    expect(up(demoMinute('viola', '21:30', 'clear'))).toBeUndefined();
    const owned = turned(90);
    const kit = produce(owned.kit, (draft) => void delete draft.filters.polariser);
    expect(up({ ...owned, kit })).toBeUndefined();
  });
});

describe('for light on the face', () => {
  test('a panel and a turn of the camera; no panel where one stands, no turn where the framing is pinned', () => {
    const free = families(demoMinute('cello', '13:00', 'clear'), 'ambient-lights-the-face');
    expect(ofKind(free, 'shade')).toHaveLength(1);
    expect(ofKind(free, 'bearing').length).toBeGreaterThan(10);
    expect(ofKind(free, 'tilt')).toEqual([]);
    const fixed = families(
      demoMinute(
        'cello',
        '13:00',
        'clear',
        editSetup('cello', { shaded: true, framingPinned: true }),
      ),
      'ambient-lights-the-face',
    );
    expect(fixed.flat()).toEqual([]);
  });
});

describe('for heads too strong', () => {
  test('parts go on that the modifier has and the light does not use', () => {
    const asked = demoMinute(
      'viola',
      '21:10',
      'clear',
      editLight('viola', 'key', { diffuser: true, baffle: false, grid: false }),
    );
    expect(ofKind(families(asked, 'head-too-strong'), 'part-on').map(({ part }) => part)).toEqual([
      'grid',
      'baffle',
    ]);
    const pinned = demoMinute(
      'viola',
      '21:10',
      'clear',
      editLight('viola', 'key', { modifierPinned: true }),
    );
    expect(families(pinned, 'head-too-strong')).toEqual([]);
  });
});

test('nothing of the document helps where no dial fits', () => {
  expect(families(demoMinute('viola', '15:00', 'clear'), 'no-setting')).toEqual([]);
});
