import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { together } from '../../src/core/plan/edits.ts';
import { applyEdit } from '../../src/core/plan/history.ts';
import type { Kit } from '../../src/core/plan/kit.ts';
import { addPhoto } from '../../src/core/plan/photo-edits.ts';
import { kitReferences } from '../../src/core/plan/references.ts';
import { importShoot } from '../../src/exchange/import-shoot.ts';
import { readShootFile, writeShootFile, type ShootFile } from '../../src/exchange/shoot-file.ts';
import { defined } from '../support/defined.ts';
import { plainPhoto } from '../support/plain-photo.ts';
import { kitArbitrary, shootWithKitArbitrary } from '../support/shoot-arbitrary.ts';

const demoFile = async (): Promise<ShootFile> => {
  const read = await readShootFile(
    writeShootFile({ shoot: demoShoot(), kit: demoKit(), photos: {}, exportedAtMs: 0 }),
    async () => null,
  );
  if (!read.ok) throw new Error(read.problem.sentences.join(' '));
  return read.value;
};

const SHELVES = [
  'cameras',
  'lenses',
  'heads',
  'modifiers',
  'filters',
  'gels',
  'stands',
  'batteries',
] as const;

describe('what an import does here', () => {
  test('a shoot that is not here keeps its id', async () => {
    const plan = importShoot({
      file: await demoFile(),
      shootIdsHere: ['x'],
      kit: demoKit(),
      newId: 'n',
    });
    expect([plan.shoot, plan.copyOf]).toEqual([demoShoot(), null]);
  });

  test('a shoot that is here already becomes a copy with the id handed in', async () => {
    const plan = importShoot({
      file: await demoFile(),
      shootIdsHere: ['demo'],
      kit: demoKit(),
      newId: 'n',
    });
    expect([plan.shoot, plan.copyOf]).toEqual([{ ...demoShoot(), id: 'n' }, 'demo']);
  });

  test('heads that are not in the kit are added, and named', async () => {
    const file = await demoFile();
    const kit: Kit = { ...demoKit(), heads: {} };
    const plan = importShoot({ file, shootIdsHere: [], kit, newId: 'n' });
    expect(applyEdit(kit, plan.kitEdit).document.heads).toEqual(file.kit.heads);
    expect(plan.added).toEqual(Object.values(file.kit.heads).map(({ name }) => name));
    expect(plan.keptAsHere).toEqual([]);
  });

  test('a head measured here stays as measured here, and is named', async () => {
    const file = await demoFile();
    const [id, head] = defined(Object.entries(file.kit.heads)[0]);
    const kit: Kit = {
      ...demoKit(),
      heads: { ...demoKit().heads, [id]: { ...head, recycleS: 7 } },
    };
    const plan = importShoot({ file, shootIdsHere: [], kit, newId: 'n' });
    expect(applyEdit(kit, plan.kitEdit).document).toEqual(kit);
    expect(plan.keptAsHere).toEqual([head.name]);
  });

  test('the pictures that came along are handed on, and those that did not are counted', async () => {
    const file = await demoFile();
    const { document: shoot } = applyEdit(
      file.shoot,
      together(
        addPhoto('pier', 'p1', { ...plainPhoto, contentHash: 'a'.repeat(64) }),
        addPhoto('pier', 'p2', { ...plainPhoto, contentHash: 'b'.repeat(64) }),
        addPhoto('pier', 'p3', { ...plainPhoto, contentHash: 'c'.repeat(64), widthPx: 0 }),
      ),
    );
    const photos = {
      ['a'.repeat(64)]: { type: 'image/jpeg', bytes: Uint8Array.from([0xff, 0xd8, 0xff]) },
    };
    const plan = importShoot({
      file: { ...file, shoot, photos },
      shootIdsHere: [],
      kit: demoKit(),
      newId: 'n',
    });
    expect(plan.photos).toEqual(photos);
    // p3 was kept without a picture from the start.
    expect(plan.photosWithoutPicture).toBe(1);
  });

  test('whatever comes into whatever kit, nothing here changes and nothing the shoot names is missing', () => {
    fc.assert(
      fc.property(shootWithKitArbitrary, kitArbitrary, ({ shoot, kit: theirs }, kit) => {
        const plan = importShoot({
          file: { shoot, kit: theirs, photos: {} },
          shootIdsHere: [],
          kit,
          newId: 'n',
        });
        const after = applyEdit(kit, plan.kitEdit).document;
        for (const shelf of SHELVES)
          for (const [id, item] of Object.entries(kit[shelf]))
            expect(after[shelf][id]).toEqual(item);
        for (const { shelf, id } of kitReferences(shoot)) expect(after[shelf]).toHaveProperty([id]);
      }),
      { numRuns: 60 },
    );
  });
});
