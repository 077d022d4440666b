import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { editLight, editSetup, together, type Edit } from '../../../src/core/plan/edits.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import { fixEdit, type SetupChange, type SetupFix } from '../../../src/core/plan/setup-fix.ts';
import { setupFixes } from '../../../src/core/plan/setup-fixes.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';
import { afterEdit, expectFixesToFix } from '../../support/fix-law.ts';

const kindsOf = (fixes: readonly SetupFix[]): readonly SetupChange['kind'][] =>
  fixes.flatMap(({ changes }) => changes.map(({ kind }) => kind));

/** Key from the side and fill from behind the camera: both out of the picture. */
const clearOfTheFrame = together(
  editLight('quartet', 'key', { angleDeg: 70, distanceM: 5 }),
  editLight('quartet', 'fill', { distanceM: 6, modifierId: 'long-throw', stops: -3 }),
  editSetup('quartet', { spreadLimitStops: 2 }),
);

const CLOCKS = ['06:20', '13:00', '19:00', '21:10'];

describe('a fix fixes: made in the document and solved again it gives a recipe, one step weaker it does not', () => {
  test.each(SKY_CONDITIONS)(
    'every setup of the demo through the day, %s',
    { timeout: 120_000 },
    (condition) => {
      for (const setupId of Object.keys(demoShoot().setups))
        for (const clock of CLOCKS) expectFixesToFix(demoMinute(setupId, clock, condition));
    },
  );

  test(
    'a light that can come nearer does, out of the picture and within the spread',
    { timeout: 60_000 },
    () => {
      for (const clock of ['20:05', '20:20']) {
        const asked = demoMinute('quartet', clock, 'clear', clearOfTheFrame);
        const closer = expectFixesToFix(asked).filter(({ changes }) =>
          changes.some((change) => change.kind === 'distance' && change.closer),
        );
        expect(closer.length).toBeGreaterThan(0);
        for (const fix of closer) {
          const view = defined(afterEdit(asked, defined(fixEdit('quartet', fix))));
          expect(view.lightsInFrame).toEqual([]);
          for (const { faces } of view.sources) expect(faces.spreadStops).toBeLessThanOrEqual(2);
        }
      }
    },
  );

  test('sun on the face is kept off by a panel', { timeout: 60_000 }, () => {
    expect(kindsOf(expectFixesToFix(demoMinute('cello', '13:00', 'clear')))).toContain('shade');
  });

  test('a box gives up its diffuser', { timeout: 60_000 }, () => {
    const asked = demoMinute(
      'cello',
      '18:30',
      'clear',
      editLight('cello', 'key', { baffle: true, distanceM: 2.2, angleDeg: 100 }),
      editSetup('cello', { holdStops: 2 }),
    );
    expect(kindsOf(expectFixesToFix(asked))).toContain('part-off');
  });

  test(
    'where no single change is enough the two lightest pairs are offered, not one pair twice',
    { timeout: 60_000 },
    () => {
      for (const pinnedShutterS of [null, 1 / 250]) {
        const asked = demoMinute(
          'quartet',
          '19:00',
          'clear',
          editLight('quartet', 'key', { angleDeg: 60, distanceM: 4.4 }),
          editLight('quartet', 'fill', { distanceM: 6 }),
          editSetup('quartet', {
            spreadLimitStops: 1.2,
            holdStops: pinnedShutterS === null ? 2 : 1,
            clockPinned: true,
            framingPinned: true,
            pinnedShutterS,
          }),
        );
        const fixes = expectFixesToFix(asked);
        expect(fixes.length).toBeGreaterThan(0);
        expect(fixes.length).toBeLessThanOrEqual(2);
        for (const { changes } of fixes) expect(changes).toHaveLength(2);
      }
    },
  );
});

const pinAll =
  (setupId: string): Edit<Shoot> =>
  (shoot) => {
    const setup = defined(shoot.setups[setupId]);
    Object.assign(setup, { clockPinned: true, holdPinned: true, framingPinned: true });
    for (const light of Object.values(setup.lights))
      Object.assign(light, { distancePinned: true, modifierPinned: true });
  };

describe('what the user has pinned stays', () => {
  const PINNED_AWAY: readonly SetupChange['kind'][] = [
    'clock',
    'hold',
    'bearing',
    'tilt',
    'focal-length',
    'distance',
    'modifier',
    'part-off',
    'part-on',
  ];

  test.each([
    ['a sky above the reach', 'quartet', '20:00', 'clear'],
    ['light on the face', 'cello', '13:00', 'clear'],
    ['a head too strong', 'quartet', '21:10', 'clear'],
  ] as const)(
    '%s is not fixed by anything pinned',
    { timeout: 60_000 },
    (_, setupId, clock, condition) => {
      const free = kindsOf(setupFixes(demoMinute(setupId, clock, condition)));
      expect(free.some((kind) => PINNED_AWAY.includes(kind))).toBe(true);
      const pinned = expectFixesToFix(demoMinute(setupId, clock, condition, pinAll(setupId)));
      for (const kind of kindsOf(pinned)) expect(PINNED_AWAY).not.toContain(kind);
    },
  );

  test('a pinned shutter leaves sync speed and tripod alone', () => {
    const asked = demoMinute(
      'quartet',
      '20:00',
      'clear',
      editSetup('quartet', { pinnedShutterS: 1 / 250 }),
    );
    const kinds = kindsOf(expectFixesToFix(asked));
    for (const kind of ['sync-shutter', 'camera', 'lens', 'tripod'])
      expect(kinds).not.toContain(kind);
  });

  test('a pin that is itself the trouble is named, and giving it up works', () => {
    const asked = demoMinute(
      'quartet',
      '20:42',
      'broken-cloud',
      editLight('quartet', 'key', { pinnedPowerStops: -8 }),
    );
    const view = viewOfMinute(asked);
    expect(view.answer.ok).toBe(false);
    const unpin = defined(
      expectFixesToFix(asked).find(({ changes }) => changes[0]?.kind === 'unpin'),
    );
    expect(unpin.changes).toMatchObject([{ kind: 'unpin', pin: 'power', lightIds: ['key'] }]);
  });
});

const heads = (input: SetupCaseInput): unknown =>
  setupFixes(input).flatMap(({ changes }) =>
    changes.flatMap((change) => (change.kind === 'heads' ? [change.owned] : [])),
  );

describe('the list of fixes', () => {
  test('brings what asks least of the crew first: nearer before a second head, a second head before other sync', () => {
    const kinds = kindsOf(setupFixes(demoMinute('quartet', '20:00', 'clear')));
    expect(kinds.indexOf('clock')).toBeLessThan(kinds.indexOf('hold'));
    expect(kinds.indexOf('hold')).toBeLessThan(kinds.indexOf('sync-shutter'));
  });

  test('shows no second head as owned that the car does not hold', () => {
    const asked = demoMinute('quartet', '20:00', 'clear');
    expect(heads(asked)).toEqual([false]);
    const kit = produce(asked.kit, (draft) => void (defined(draft.heads['head-400']).owned = 2));
    expect(heads({ ...asked, kit })).toEqual([true]);
  });

  test('is empty for a setup that is gone or shows no sky', () => {
    expect(setupFixes({ ...demoMinute('quartet', '20:00', 'clear'), setupId: 'gone' })).toEqual([]);
  });
});
