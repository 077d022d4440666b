import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import {
  editKitItem,
  editLight,
  editSetup,
  together,
  type Edit,
} from '../../../src/core/plan/edits.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import { fixEdit, type SetupChange, type SetupFix } from '../../../src/core/plan/setup-fix.ts';
import { setupFixes } from '../../../src/core/plan/setup-fixes.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import type { RecipeProblemKind } from '../../../src/core/strobe/recipe.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';
import { afterEdit, expectFixesToFix } from '../../support/fix-law.ts';

const kindsOf = (fixes: readonly SetupFix[]): readonly SetupChange['kind'][] =>
  fixes.flatMap(({ changes }) => changes.map(({ kind }) => kind));

/** What a fix changes, whatever the amounts and their order. */
const thingsChanged = ({ changes }: SetupFix): readonly string[] =>
  changes
    .map((change) => {
      const lights = 'lightIds' in change ? change.lightIds : 'lightId' in change && change.lightId;
      return JSON.stringify([change.kind, lights, 'part' in change && change.part]);
    })
    .toSorted((one, other) => one.localeCompare(other));

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
      // Only the whole hold given up would be enough, and that is none; sync brings at most three
      // stops, a pinned shutter nothing.
      for (const { holdStops, pinnedShutterS } of [
        { holdStops: 3.5, pinnedShutterS: null },
        { holdStops: 1, pinnedShutterS: 1 / 250 },
      ]) {
        const asked = demoMinute(
          'quartet',
          '19:00',
          'clear',
          editLight('quartet', 'key', { modifierId: 'reflector', angleDeg: 60, distanceM: 4.4 }),
          editLight('quartet', 'fill', { modifierId: 'umbrella', stops: -2, distanceM: 6 }),
          editSetup('quartet', {
            spreadLimitStops: 1.2,
            holdStops,
            clockPinned: true,
            framingPinned: true,
            pinnedShutterS,
          }),
        );
        const fixes = expectFixesToFix(asked);
        expect(fixes).toHaveLength(2);
        for (const { changes } of fixes) expect(changes).toHaveLength(2);
        const [one, other] = fixes.map(thingsChanged);
        expect(one).not.toEqual(other);
      }
    },
  );
});

/** A fill that runs out first, by less than a second head brings; the key has some in hand. */
const fillFarBack = together(
  editLight('quartet', 'fill', {
    headId: 'head-400',
    modifierId: 'umbrella',
    stops: -2,
    distanceM: 6,
  }),
  editSetup('quartet', { holdStops: 1.2 }),
);

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

  test.each<readonly [string, RecipeProblemKind, string, string, Edit<Shoot>]>([
    ['a sky above the reach', 'sky-above-reach', 'quartet', '20:00', fillFarBack],
    ['light on the face', 'ambient-lights-the-face', 'cello', '13:00', () => undefined],
    [
      'a head too strong',
      'head-too-strong',
      'quartet',
      '21:05',
      editLight('quartet', 'fill', { modifierId: 'umbrella', stops: -2, distanceM: 2 }),
    ],
  ])('%s is not fixed by anything pinned', { timeout: 60_000 }, (_, trouble, ...minute) => {
    const [setupId, clock, edit] = minute;
    const asked = demoMinute(setupId, clock, 'clear', edit);
    const { answer } = viewOfMinute(asked);
    expect(answer.ok ? 'works' : answer.problem.kind).toBe(trouble);
    const free = kindsOf(setupFixes(asked));
    expect(free.some((kind) => PINNED_AWAY.includes(kind))).toBe(true);
    const pinned = expectFixesToFix(demoMinute(setupId, clock, 'clear', edit, pinAll(setupId)));
    for (const kind of kindsOf(pinned)) expect(PINNED_AWAY).not.toContain(kind);
  });

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

const owningTwo = (input: SetupCaseInput): SetupCaseInput => ({
  ...input,
  kit: produce(input.kit, editKitItem('heads', 'head-400', { owned: 2 })),
});

const heads = (input: SetupCaseInput): unknown =>
  setupFixes(input).flatMap(({ changes }) =>
    changes.flatMap((change) => (change.kind === 'heads' ? [change.owned] : [])),
  );

describe('the list of fixes', () => {
  test('brings what asks least of the crew first: nearer before a second head, a second head before other sync', () => {
    const asked = demoMinute('quartet', '20:00', 'clear', fillFarBack);
    const order: readonly SetupChange['kind'][] = [
      'distance',
      'clock',
      'hold',
      'heads',
      'sync-shutter',
    ];
    const places = order.map((kind) => kindsOf(setupFixes(owningTwo(asked))).indexOf(kind));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((one, other) => one - other));
  });

  test('shows no second head as owned that the car does not hold', () => {
    const asked = demoMinute('quartet', '20:00', 'clear', fillFarBack);
    expect(heads(asked)).toEqual([false]);
    expect(heads(owningTwo(asked))).toEqual([true]);
  });

  test('is empty for a setup that is gone or shows no sky', () => {
    expect(setupFixes({ ...demoMinute('quartet', '20:00', 'clear'), setupId: 'gone' })).toEqual([]);
  });
});
