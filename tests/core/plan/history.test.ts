import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import {
  addSetup,
  addSpot,
  editSetup,
  editSpot,
  editSpotFraming,
  removeSetup,
  removeSpot,
  type Edit,
} from '../../../src/core/plan/edits.ts';
import type { HistoryEntry } from '../../../src/core/plan/history-entry.ts';
import { applyEdit, planRedo, planUndo, type Withdrawal } from '../../../src/core/plan/history.ts';
import { missingSpotIds } from '../../../src/core/plan/references.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import { defined } from '../../support/defined.ts';
import { editArbitrary } from '../../support/random-edits.ts';

type Desk = { readonly shoot: Shoot; readonly log: readonly HistoryEntry[] };

const opened = (): Desk => ({ shoot: demoShoot(), log: [] });

const entry = (desk: Desk, authorId: string, rest: Partial<HistoryEntry>): HistoryEntry => ({
  id: `entry-${desk.log.length}`,
  documentId: 'demo',
  kind: 'shoot',
  authorId,
  atMs: desk.log.length,
  label: '',
  patches: [],
  inversePatches: [],
  undoes: null,
  ...rest,
});

/** An edit that would leave a setup without its spot is refused, as the storage does. */
const edit = (desk: Desk, authorId: string, change: Edit<Shoot>): Desk => {
  const { document, patches, inversePatches } = applyEdit(desk.shoot, change);
  if (patches.length === 0 || missingSpotIds(document).size > 0) return desk;
  return {
    shoot: document,
    log: [...desk.log, entry(desk, authorId, { patches, inversePatches })],
  };
};

type Stepped = { readonly desk: Desk; readonly leftAlone: readonly string[] } | null;

const step = (plan: Withdrawal<Shoot> | null, desk: Desk, authorId: string): Stepped =>
  plan && {
    desk: {
      shoot: plan.document,
      log: [
        ...desk.log,
        entry(desk, authorId, {
          patches: plan.patches,
          inversePatches: plan.inversePatches,
          undoes: plan.withdraws.id,
        }),
      ],
    },
    leftAlone: plan.leftAlone,
  };

const undo = (desk: Desk, authorId: string): Stepped =>
  step(planUndo(desk.shoot, desk.log, authorId), desk, authorId);
const redo = (desk: Desk, authorId: string): Stepped =>
  step(planRedo(desk.shoot, desk.log, authorId), desk, authorId);

const must = (stepped: Stepped): NonNullable<Stepped> => {
  if (stepped === null) throw new Error('there was nothing to do');
  return stepped;
};

const bearing = (desk: Desk): number | undefined => desk.shoot.spots['pier']?.framing.bearingDeg;
const sample = demoShoot();
const spot = defined(sample.spots['pier']);
const [setupId, setup] = defined(
  Object.entries(sample.setups).find(([, { spotId }]) => spotId === 'pier'),
);

describe('an edit and its way back', () => {
  test('the shoot handed in stays as it is and stays changeable', () => {
    const before = demoShoot();
    const { document } = applyEdit(before, editSpot('pier', { name: 'Pier' }));
    expect(before).toStrictEqual(demoShoot());
    expect(document.spots['pier']?.name).toBe('Pier');
    expect(Object.isFrozen(before) || Object.isFrozen(document)).toBe(false);
  });

  test('writing a field with what it holds, or a framing with an equal one, changes nothing', () => {
    const same = edit(
      opened(),
      'ann',
      editSpot('pier', { name: spot.name, framing: { ...spot.framing } }),
    );
    expect(same.log).toEqual([]);
  });
});

describe('undo and redo of one author', () => {
  test('an undone bearing is the bearing before, and redone the bearing after', () => {
    const first = bearing(opened());
    const turned = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
    const back = must(undo(turned, 'ann'));
    expect([bearing(back.desk), back.leftAlone]).toEqual([first, []]);
    const again = must(redo(back.desk, 'ann'));
    expect([bearing(again.desk), again.leftAlone]).toEqual([12, []]);
    expect(bearing(must(undo(again.desk, 'ann')).desk)).toBe(first);
  });

  test('a fresh edit ends what could be redone', () => {
    const turned = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
    const back = must(undo(turned, 'ann')).desk;
    expect(redo(edit(back, 'ann', editSpot('pier', { name: 'Pier' })), 'ann')).toBeNull();
  });

  test('a removed spot comes back with its setups', () => {
    const gone = edit(opened(), 'ann', removeSpot('pier'));
    expect(gone.shoot.setups[setupId]).toBeUndefined();
    expect(must(undo(gone, 'ann')).desk.shoot).toStrictEqual(demoShoot());
  });

  test('nothing is to be undone in an untouched shoot', () => {
    expect(undo(opened(), 'ann')).toBeNull();
    expect(redo(opened(), 'ann')).toBeNull();
  });
});

describe('two authors', () => {
  test('each undoes their own field of the same spot', () => {
    const turned = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
    const tilted = edit(turned, 'ben', editSpotFraming('pier', { tiltDeg: 33 }));
    const back = must(undo(tilted, 'ann')).desk;
    expect(bearing(back)).toBe(spot.framing.bearingDeg);
    expect(back.shoot.spots['pier']?.framing.tiltDeg).toBe(33);
  });

  test('a bearing that the other turned since is left alone and named', () => {
    const mine = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
    const theirs = edit(mine, 'ben', editSpotFraming('pier', { bearingDeg: 50 }));
    const back = must(undo(theirs, 'ann'));
    expect(bearing(back.desk)).toBe(50);
    expect(back.leftAlone).toEqual(['Pier head, bearing: changed since, left as it is']);
  });

  test('a bearing that the other turned away and back by hand is theirs now', () => {
    let desk = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
    desk = edit(desk, 'ben', editSpotFraming('pier', { bearingDeg: 50 }));
    desk = edit(desk, 'ben', editSpotFraming('pier', { bearingDeg: 12 }));
    expect(bearing(must(undo(desk, 'ann')).desk)).toBe(12);
  });

  test('a bearing that the other turned and then undid is mine again', () => {
    const mine = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
    const theirs = edit(mine, 'ben', editSpotFraming('pier', { bearingDeg: 50 }));
    const withdrawn = must(undo(theirs, 'ben')).desk;
    expect(bearing(must(undo(withdrawn, 'ann')).desk)).toBe(spot.framing.bearingDeg);
  });

  test('an edit of a spot that the other removed comes back to nothing, in words', () => {
    const mine = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
    const gone = edit(mine, 'ben', removeSpot('pier'));
    const back = must(undo(gone, 'ann'));
    expect(back.desk.shoot).toStrictEqual(gone.shoot);
    expect(back.leftAlone).toEqual(['Pier head, bearing: removed since, nothing to put back']);
    expect(undo(back.desk, 'ann')).toBeNull();
  });

  test('a spot I added and the other renamed stays', () => {
    const mine = edit(opened(), 'ann', addSpot('quay', { ...spot, name: 'Quay' }));
    const theirs = edit(mine, 'ben', editSpot('quay', { name: 'Old quay' }));
    const back = must(undo(theirs, 'ann'));
    expect(back.desk.shoot).toStrictEqual(theirs.shoot);
    expect(back.leftAlone).toEqual(['Old quay: changed since, left as it is']);
  });

  test('a spot I added and the other put a setup on stays', () => {
    const mine = edit(opened(), 'ann', addSpot('quay', { ...spot, name: 'Quay' }));
    const theirs = edit(mine, 'ben', addSetup('solo', { ...setup, spotId: 'quay' }));
    const back = must(undo(theirs, 'ann'));
    expect(back.desk.shoot).toStrictEqual(theirs.shoot);
    expect(back.leftAlone).toEqual(['Quay: in use since, left as it is']);
  });

  test('a setup I removed does not come back to a spot that the other removed', () => {
    const mine = edit(opened(), 'ann', removeSetup(setupId));
    const theirs = edit(mine, 'ben', removeSpot('pier'));
    const back = must(undo(theirs, 'ann'));
    expect(back.desk.shoot).toStrictEqual(theirs.shoot);
    expect(back.leftAlone).toEqual([`${setup.name}: its spot was removed since, left as it is`]);
  });

  test('a setup does not move back to a spot that the other removed', () => {
    const mine = edit(opened(), 'ann', editSetup(setupId, { spotId: 'karst' }));
    const theirs = edit(mine, 'ben', removeSpot('pier'));
    const back = must(undo(theirs, 'ann'));
    expect(back.desk.shoot.setups[setupId]?.spotId).toBe('karst');
    expect(back.leftAlone).toEqual([
      `${setup.name}, spot: its spot was removed since, left as it is`,
    ]);
  });

  test('I undo mine though the other has worked since, and never theirs', () => {
    const mine = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
    const theirs = edit(mine, 'ben', editSpot('karst', { name: 'Edge' }));
    const back = must(undo(theirs, 'ann')).desk;
    expect(back.shoot.spots['karst']?.name).toBe('Edge');
    expect(undo(back, 'ann')).toBeNull();
  });
});

/** Every field of a shoot as 'path: value'. */
const leaves = (value: unknown, path = ''): readonly (readonly [string, string])[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, child]) => leaves(child, `${path}/${key}`))
    : [[path, JSON.stringify(value)]];

type Mark = { readonly author: string };
type Uncovered = Map<
  string,
  { readonly taken: Mark | undefined; readonly below: Mark | undefined }
>;

const changedLeaves = (before: Shoot, after: Shoot): readonly string[] => {
  const old = new Map(leaves(before));
  const present = new Map(leaves(after));
  return [...new Set([...old.keys(), ...present.keys()])].filter(
    (path) => old.get(path) !== present.get(path),
  );
};

const isOfPier = ([, { spotId }]: readonly [string, { readonly spotId: string }]): boolean =>
  spotId === 'pier';

/** One spot with its setups: the two meet often. */
const small = (): Shoot => {
  const shoot = demoShoot();
  return {
    ...shoot,
    spots: { pier: defined(shoot.spots['pier']) },
    setups: Object.fromEntries(Object.entries(shoot.setups).filter(isOfPier)),
  };
};

test('a field that something outside the log has changed is left alone too', () => {
  const turned = edit(opened(), 'ann', editSpotFraming('pier', { bearingDeg: 12 }));
  const elsewhere = applyEdit(turned.shoot, editSpotFraming('pier', { bearingDeg: 99 })).document;
  const back = must(undo({ ...turned, shoot: elsewhere }, 'ann'));
  expect([bearing(back.desk), back.leftAlone]).toEqual([
    99,
    ['Pier head, bearing: changed since, left as it is'],
  ]);
});

describe('laws', () => {
  const act = fc.record({
    author: fc.constantFrom('ann', 'ben'),
    does: fc.constantFrom('edit', 'edit', 'undo', 'redo'),
    change: editArbitrary,
  });

  test('an undo changes only fields that its author wrote last, a redo only fields as its undo left them, and neither takes a setup its spot, whatever two authors do', () => {
    let undos = 0;
    let held = 0;
    fc.assert(
      fc.property(fc.array(act, { minLength: 25, maxLength: 40, size: 'max' }), (acts) => {
        let desk: Desk = { shoot: small(), log: [] };
        /** Who wrote each field, the latest last; an undo takes its author's mark off. */
        const writers = new Map<string, Mark[]>();
        /** For each undo and field, the mark it took off and the one that came to light. */
        const uncovered = new Map<string, Uncovered>();
        const marks = (path: string): Mark[] => {
          const known = writers.get(path) ?? [];
          writers.set(path, known);
          return known;
        };
        acts.forEach(({ author, does, change }, turn) => {
          const before = desk.shoot;
          if (does === 'edit') {
            desk = edit(desk, author, change(desk.shoot, `new${turn}`));
            for (const path of changedLeaves(before, desk.shoot)) marks(path).push({ author });
          } else {
            const stepped = (does === 'undo' ? undo : redo)(desk, author);
            if (stepped === null) return;
            desk = stepped.desk;
            undos += 1;
            if (stepped.leftAlone.length > 0) held += 1;
            const { id, undoes } = defined(desk.log.at(-1));
            const seen: Uncovered = new Map();
            uncovered.set(id, seen);
            for (const path of changedLeaves(before, desk.shoot)) {
              if (does === 'undo') {
                const taken = marks(path).pop();
                expect([path, taken?.author]).toEqual([path, author]);
                seen.set(path, { taken, below: marks(path).at(-1) });
              } else {
                const undone = uncovered.get(defined(undoes))?.get(path);
                expect(marks(path).at(-1)).toBe(undone?.below);
                marks(path).push(defined(undone?.taken));
              }
            }
          }
          expect([...missingSpotIds(desk.shoot)]).toEqual([]);
        });
      }),
      { numRuns: 200, seed: 14052027 },
    );
    // The same runs every time: so often the two come to undo, and so often they meet.
    expect(undos).toBeGreaterThan(1000);
    expect(held).toBeGreaterThan(100);
  });

  test('a lone author who undoes everything has the first shoot again, and who redoes everything the last', () => {
    fc.assert(
      fc.property(fc.array(editArbitrary, { maxLength: 25, size: 'max' }), (edits) => {
        let desk: Desk = { shoot: small(), log: [] };
        edits.forEach((change, turn) => {
          desk = edit(desk, 'ann', change(desk.shoot, `new${turn}`));
        });
        const last = desk.shoot;
        for (let round = 0; round < 2; round += 1) {
          for (let back = undo(desk, 'ann'); back !== null; back = undo(desk, 'ann')) {
            expect(back.leftAlone).toEqual([]);
            desk = back.desk;
          }
          expect(desk.shoot).toStrictEqual(small());
          for (let again = redo(desk, 'ann'); again !== null; again = redo(desk, 'ann')) {
            expect(again.leftAlone).toEqual([]);
            desk = again.desk;
          }
          expect(desk.shoot).toStrictEqual(last);
        }
      }),
      { numRuns: 60 },
    );
  });
});
