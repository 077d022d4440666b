import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import {
  editKitItem,
  editLight,
  editSetup,
  together,
  type Edit,
} from '../../../src/core/plan/edits.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import { changeEdit, fixEdit, type SetupChange } from '../../../src/core/plan/setup-fix.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import { isTooUneven, sideSpreads } from '../../../src/core/plan/side-spread.ts';
import { spreadFixes, type SpreadFix } from '../../../src/core/plan/spread-fixes.ts';
import { judgeRecipe } from '../../../src/core/strobe/judge-recipe.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';

const after = (asked: SetupCaseInput, edit: Edit<Shoot>): ReturnType<typeof caseOfMinute> =>
  caseOfMinute({ ...asked, shoot: produce(asked.shoot, edit) });

const unevenSides = ({ sources, setup }: ReturnType<typeof caseOfMinute>): readonly string[] =>
  sideSpreads(sources, setup)
    .filter((side) => isTooUneven(side, setup))
    .map(({ role }) => role);

/** One step less: 0.05 m, 0.1 m of height where it stands, a degree. */
function weaker(change: SetupChange, asked: SetupCaseInput): Edit<Shoot> | null {
  const { setupId } = asked;
  switch (change.kind) {
    case 'distance':
      return together(
        ...change.lightIds.map((id) =>
          editLight(setupId, id, { distanceM: change.distanceM - 0.05 }),
        ),
      );
    case 'feather':
      return editLight(setupId, change.lightId, { featherDeg: change.featherDeg - 1 });
    case 'height': {
      const { faceHeightM } = defined(asked.shoot.setups[setupId]);
      const upM = change.heightM - faceHeightM;
      const level = change.distanceM ** 2 - upM ** 2;
      return editLight(setupId, change.lightId, {
        heightM: change.heightM - 0.1,
        distanceM: Math.sqrt(level + (upM - 0.1) ** 2),
      });
    }
    default:
      return null;
  }
}

/** Made in the document it evens that side, and costs what it says; one step weaker it does not even it. */
function expectToEven(asked: SetupCaseInput): readonly SpreadFix[] {
  const base = caseOfMinute(asked);
  const fixes = spreadFixes(asked);
  if (unevenSides(base).length === 0) expect(fixes).toEqual([]);
  const inHandStops = judgeRecipe(defined(base.input)).inHandStops;
  for (const fix of fixes) {
    const what = JSON.stringify(fix.changes);
    expect(unevenSides(base), what).toContain(fix.role);
    const made = after(asked, defined(fixEdit(asked.setupId, fix)));
    expect(unevenSides(made), what).not.toContain(fix.role);
    const judged = judgeRecipe(defined(made.input));
    expect(judged.inHandStops, what).toBeCloseTo(fix.inHandStops, 9);
    expect(inHandStops - judged.inHandStops, what).toBeCloseTo(fix.costsStops, 9);
    const less = weaker(defined(fix.changes.at(-1)), asked);
    const others = fix.changes
      .slice(0, -1)
      .map((change) => defined(changeEdit(asked.setupId, change)));
    if (less !== null)
      expect(unevenSides(after(asked, together(...others, less))), what).toContain(fix.role);
  }
  return fixes;
}

const kindsOf = (fixes: readonly SpreadFix[]): readonly string[] =>
  fixes.map(({ changes }) => defined(changes[0]).kind);

describe('a fix for uneven faces evens them', () => {
  test.each([
    ['the demo’s hard key, 0.1 over the limit', {}, {}],
    [
      'a soft key at the side',
      { spreadLimitStops: 0.6 },
      { modifierId: 'octabox', diffuser: true, angleDeg: 50, distanceM: 4 },
    ],
    ['two rows', { rows: 2, people: 8 }, { angleDeg: 20 }],
    [
      'a bounced key',
      {},
      {
        angleDeg: 50,
        distanceM: 3,
        bounce: {
          reflectance: 0.8,
          colour: '',
          headToSurfaceM: 0.6,
          incidenceDeg: 20,
          exitDeg: 30,
          panelSideM: null,
        },
      },
    ],
    ['a key low and near', { people: 2 }, { heightM: 1.65, distanceM: 2.2, angleDeg: 60 }],
  ] as const)('%s', (_, setup, key) => {
    const asked = demoMinute(
      'quartet',
      '20:30',
      'clear',
      editSetup('quartet', setup),
      editLight('quartet', 'key', key),
    );
    expect(expectToEven(asked).length).toBeGreaterThan(0);
  });

  test('nothing is offered where the faces are even enough, or one person stands there', () => {
    for (const fields of [{ spreadLimitStops: 2 }, { people: 1 }])
      expect(
        expectToEven(demoMinute('quartet', '20:30', 'clear', editSetup('quartet', fields))),
      ).toEqual([]);
  });
});

describe('what is offered', () => {
  const soft = demoMinute(
    'quartet',
    '20:30',
    'clear',
    editSetup('quartet', { spreadLimitStops: 0.6 }),
    editLight('quartet', 'key', {
      modifierId: 'octabox',
      diffuser: true,
      angleDeg: 40,
      distanceM: 4,
    }),
  );

  test('back costs reach by the inverse square law, a second head gains it', () => {
    const fixes = expectToEven(soft);
    const back = defined(fixes.find(({ changes }) => changes[0]?.kind === 'distance'));
    expect(back.costsStops).toBeGreaterThan(0);
    expect(kindsOf(fixes)).toContain('feather');
    const mirror = defined(fixes.find(({ changes }) => changes[0]?.kind === 'mirror'));
    expect(mirror.costsStops).toBeLessThanOrEqual(0);
    expect(mirror.changes[0]).toMatchObject({ owned: false });
  });

  test('a second head that the car holds may be used', () => {
    const owning = {
      ...soft,
      kit: produce(soft.kit, editKitItem('heads', 'head-600', { owned: 2 })),
    };
    const mirror = spreadFixes(owning).find(({ changes }) => changes[0]?.kind === 'mirror');
    expect(mirror?.changes[0]).toMatchObject({ owned: true });
  });

  test('where turning or doubling alone is not enough, it goes together with a step back that costs less than back alone', () => {
    const asked = demoMinute(
      'quartet',
      '20:30',
      'clear',
      editSetup('quartet', { spreadLimitStops: 0.4, rows: 2, people: 7 }),
      editLight('quartet', 'key', {
        modifierId: 'octabox',
        diffuser: true,
        angleDeg: 35,
        distanceM: 4.2,
      }),
    );
    const fixes = expectToEven(asked).filter(({ role }) => role === 'key');
    const kinds = fixes.map(({ changes }) => changes.map(({ kind }) => kind).join('+'));
    expect(kinds).toContain('distance');
    expect(kinds).toContain('mirror+distance');
    const costs = (kind: string): number => defined(fixes[kinds.indexOf(kind)]).costsStops;
    expect(costs('mirror+distance')).toBeLessThan(costs('distance'));
  });

  test('a pinned distance keeps the light where it stands', () => {
    const pinned = {
      ...soft,
      shoot: produce(soft.shoot, together(editLight('quartet', 'key', { distancePinned: true }))),
    };
    const kinds = kindsOf(expectToEven(pinned));
    expect(kinds).not.toContain('distance');
    expect(kinds).not.toContain('height');
    expect(kinds).toContain('feather');
  });
});
