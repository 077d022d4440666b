import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';

import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import {
  editKitItem,
  editSetup,
  editShoot,
  editSpot,
  editSpotFraming,
  removeSpot,
  type Edit,
} from '../../src/core/plan/edits.ts';
import type { Shoot } from '../../src/core/plan/shoot.ts';
import type { Result } from '../../src/core/units/result.ts';
import type { ShootRepository, Stamp } from '../../src/storage/shoot-repository.ts';
import { defined } from './defined.ts';
import { editArbitrary } from './random-edits.ts';

/** Two repositories that stand on one store, as two tabs do; a new store at every call. */
export type OpenTwo = () => readonly [ShootRepository, ShootRepository];

const valueOf = <Value>(result: Result<Value, unknown>): Value => {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.problem)}`);
  return result.value;
};

const SHOOT = { kind: 'shoot', id: 'demo' } as const;
const KIT = { kind: 'kit', id: demoKit().id } as const;

let stamps = 0;
const stampOf = (authorId: string): Stamp => {
  stamps += 1;
  return { entryId: `entry-${stamps}`, authorId, atMs: 1_810_000_000_000 + stamps };
};

const change = (
  tab: ShootRepository,
  authorId: string,
  edit: Edit<Shoot>,
  label = 'a change',
): ReturnType<typeof tab.edit<'shoot'>> =>
  tab.edit({ ...SHOOT, edit, label, stamp: stampOf(authorId) });

const shootIn = async (tab: ShootRepository): Promise<Shoot> =>
  valueOf(await tab.read('shoot', 'demo'));

const undo = (
  tab: ShootRepository,
  authorId: string,
  documents: Parameters<typeof tab.undo>[0]['documents'] = [SHOOT],
): ReturnType<typeof tab.undo> => tab.undo({ documents, stamp: stampOf(authorId) });

const broken = (): never => {
  throw new Error('a fault of ours');
};

const openedBy = async (openTwo: OpenTwo): Promise<readonly [ShootRepository, ShootRepository]> => {
  const tabs = openTwo();
  valueOf(await tabs[0].create('shoot', demoShoot()));
  valueOf(await tabs[0].create('kit', demoKit()));
  return tabs;
};

/** What every place that keeps shoots does. */
export const describeRepository = (name: string, openTwo: OpenTwo): void => {
  describe(`a shoot repository ${name}`, () => {
    test('a shoot that was created is there, whole, for every tab, and listed', async () => {
      const [, other] = await openedBy(openTwo);
      expect(await shootIn(other)).toStrictEqual(demoShoot());
      const { id, title, date } = demoShoot();
      expect(valueOf(await other.listShoots())).toEqual([{ id, title, date }]);
    });

    test('shoots are listed by date, then title', async () => {
      const [tab] = openTwo();
      for (const [id, title, date] of [
        ['c', 'Quartet', '2027-06-01'],
        ['a', 'Quartet', '2027-05-14'],
        ['b', 'Choir', '2027-06-01'],
      ] as const)
        valueOf(await tab.create('shoot', { ...demoShoot(), id, title, date }));
      expect(valueOf(await tab.listShoots()).map(({ id }) => id)).toEqual(['a', 'b', 'c']);
    });

    test('what is not there is an answer', async () => {
      const [tab] = openTwo();
      expect(await tab.read('kit', 'none')).toEqual({ ok: false, problem: { kind: 'missing' } });
      expect(await tab.remove('kit', 'none')).toEqual({ ok: false, problem: { kind: 'missing' } });
      expect(await change(tab, 'ann', editShoot({ title: 'x' }))).toEqual({
        ok: false,
        problem: { kind: 'missing' },
      });
    });

    test('a second shoot of the same id is not created over the first', async () => {
      const [tab, other] = await openedBy(openTwo);
      expect(await other.create('shoot', { ...demoShoot(), title: 'Another' })).toEqual({
        ok: false,
        problem: { kind: 'already-there' },
      });
      expect(await shootIn(tab)).toStrictEqual(demoShoot());
    });

    test('a shoot that is not what it should be is not created', async () => {
      const [tab] = openTwo();
      expect(await tab.create('shoot', { ...demoShoot(), date: '2027-02-30' })).toMatchObject({
        ok: false,
        problem: { kind: 'refused', faults: [{ path: 'date', found: '‘2027-02-30’' }] },
      });
      expect(valueOf(await tab.listShoots())).toEqual([]);
    });

    test('an edit is there for every tab and after it was answered', async () => {
      const [tab, other] = await openedBy(openTwo);
      const edited = valueOf(await change(tab, 'ann', editShoot({ title: 'Octet' })));
      expect(edited.title).toBe('Octet');
      expect(await shootIn(other)).toStrictEqual({ ...demoShoot(), title: 'Octet' });
    });

    test.each<[string, Edit<Shoot>, string, string]>([
      [
        'a latitude off the globe',
        editSpot('pier', { latitudeDeg: 412 }),
        'spots.pier.latitudeDeg',
        '412',
      ],
      [
        'no number',
        editSpotFraming('pier', { tiltDeg: Number.NaN }),
        'spots.pier.framing.tiltDeg',
        'NaN',
      ],
      ['a date that does not exist', editShoot({ date: '2027-02-30' }), 'date', '‘2027-02-30’'],
      [
        'a setup at a spot that is not there',
        editSetup('cello', { spotId: 'gone' }),
        'setups.cello.spotId',
        '‘gone’, which is not there',
      ],
    ])(
      'an edit that writes %s is refused with the fault, and nothing is written',
      async (_, edit, path, found) => {
        const [tab, other] = await openedBy(openTwo);
        expect(await change(tab, 'ann', edit)).toMatchObject({
          ok: false,
          problem: { kind: 'refused', faults: [{ path, found }] },
        });
        expect(await shootIn(other)).toStrictEqual(demoShoot());
        expect(await undo(tab, 'ann')).toEqual({ ok: false, problem: { kind: 'nothing-to-undo' } });
      },
    );

    test('document and log are written together or not at all', async () => {
      const [tab] = await openedBy(openTwo);
      const stamp = stampOf('ann');
      valueOf(await tab.edit({ ...SHOOT, edit: editShoot({ title: 'One' }), label: 'one', stamp }));
      await expect(change(tab, 'ann', broken)).rejects.toThrow('a fault of ours');
      expect((await shootIn(tab)).title).toBe('One');
      valueOf(await undo(tab, 'ann'));
      expect(await shootIn(tab)).toStrictEqual(demoShoot());
    });

    test('where the log takes no entry, the document is not written either', async () => {
      const [tab] = await openedBy(openTwo);
      const stamp = stampOf('ann');
      const rename = (title: string): Promise<unknown> =>
        tab.edit({ ...SHOOT, edit: editShoot({ title }), label: title, stamp });
      expect(await rename('One')).toMatchObject({ ok: true });
      const again = await rename('Two').catch(() => ({ ok: false }));
      expect(again).toMatchObject({ ok: false });
      expect((await shootIn(tab)).title).toBe('One');
    });

    test('an edit that changes nothing leaves nothing to undo and takes nothing from redo', async () => {
      const [tab] = await openedBy(openTwo);
      valueOf(await change(tab, 'ann', editShoot({ title: demoShoot().title })));
      expect(await undo(tab, 'ann')).toMatchObject({ ok: false });
      valueOf(await change(tab, 'ann', editShoot({ title: 'One' })));
      valueOf(await undo(tab, 'ann'));
      valueOf(await change(tab, 'ann', editShoot({ title: demoShoot().title })));
      valueOf(await tab.redo({ documents: [SHOOT], stamp: stampOf('ann') }));
      expect((await shootIn(tab)).title).toBe('One');
    });

    test('edits of two tabs at the same moment are both kept', async () => {
      const [tab, other] = await openedBy(openTwo);
      await Promise.all([
        ...[1, 2, 3].map((walkInMin) => change(tab, 'ann', editSpot('pier', { walkInMin }))),
        ...[1, 2, 3].map((tiltDeg) => change(other, 'ben', editSpotFraming('pier', { tiltDeg }))),
      ]);
      const { pier } = (await shootIn(tab)).spots;
      expect([pier?.walkInMin, pier?.framing.tiltDeg]).toEqual([3, 3]);
    });

    test('each tab undoes and redoes its own, and says what it would undo', async () => {
      const [tab, other] = await openedBy(openTwo);
      await change(tab, 'ann', editSpotFraming('pier', { bearingDeg: 12 }), 'turn Pier head');
      await change(other, 'ben', editSpotFraming('pier', { tiltDeg: 33 }), 'tilt Pier head');
      const mine = { documents: [SHOOT], authorId: 'ann' };
      expect(valueOf(await tab.canUndo(mine))).toBe('turn Pier head');
      expect(valueOf(await tab.canRedo(mine))).toBeNull();
      expect(await undo(tab, 'ann')).toEqual({
        ok: true,
        value: { label: 'turn Pier head', leftAlone: [] },
      });
      const { framing } = defined(demoShoot().spots['pier']);
      expect((await shootIn(other)).spots['pier']?.framing).toEqual({ ...framing, tiltDeg: 33 });
      expect(valueOf(await tab.canUndo(mine))).toBeNull();
      expect(valueOf(await tab.canRedo(mine))).toBe('turn Pier head');
      valueOf(await tab.redo({ documents: [SHOOT], stamp: stampOf('ann') }));
      expect((await shootIn(other)).spots['pier']?.framing).toEqual({
        ...framing,
        bearingDeg: 12,
        tiltDeg: 33,
      });
      expect(await tab.redo({ documents: [SHOOT], stamp: stampOf('ann') })).toEqual({
        ok: false,
        problem: { kind: 'nothing-to-redo' },
      });
    });

    test('an undo after the other tab removed the spot changes nothing and says so', async () => {
      const [tab, other] = await openedBy(openTwo);
      await change(tab, 'ann', editSpotFraming('pier', { bearingDeg: 12 }), 'turn Pier head');
      const gone = valueOf(await change(other, 'ben', removeSpot('pier')));
      expect(valueOf(await undo(tab, 'ann')).leftAlone).toEqual([
        'Pier head, bearing: removed since, nothing to put back',
      ]);
      expect(await shootIn(tab)).toStrictEqual(gone);
    });

    test('over shoot and kit the latest own edit is undone first', async () => {
      const [tab] = await openedBy(openTwo);
      const headId = defined(Object.keys(demoKit().heads)[0]);
      await change(tab, 'ann', editShoot({ title: 'One' }), 'rename');
      valueOf(
        await tab.edit({
          ...KIT,
          edit: editKitItem('heads', headId, { recycleS: 9 }),
          label: 'recycle',
          stamp: stampOf('ann'),
        }),
      );
      const labels = [];
      for (let round = 0; round < 2; round += 1)
        labels.push(valueOf(await undo(tab, 'ann', [SHOOT, KIT])).label);
      expect(labels).toEqual(['recycle', 'rename']);
      expect(valueOf(await tab.read('kit', KIT.id))).toStrictEqual(demoKit());
      expect(await shootIn(tab)).toStrictEqual(demoShoot());
      expect(await undo(tab, 'ann', [SHOOT, KIT])).toMatchObject({ ok: false });
      valueOf(await tab.redo({ documents: [SHOOT, KIT], stamp: stampOf('ann') }));
      expect((await shootIn(tab)).title).toBe('One');
    });

    test('a removed shoot is gone with its log, and its document is handed back for putting back', async () => {
      const [tab, other] = await openedBy(openTwo);
      await change(tab, 'ann', editShoot({ title: 'One' }));
      const removed = valueOf(await tab.remove('shoot', 'demo'));
      expect(removed).toStrictEqual({ ...demoShoot(), title: 'One' });
      expect(await other.read('shoot', 'demo')).toMatchObject({ problem: { kind: 'missing' } });
      valueOf(await other.create('shoot', defined(removed)));
      expect((await shootIn(tab)).title).toBe('One');
      expect(await undo(tab, 'ann')).toMatchObject({ problem: { kind: 'nothing-to-undo' } });
    });

    test('an observer is told the shoot at once and after every change of any tab, until stopped', async () => {
      const [tab, other] = await openedBy(openTwo);
      const titles: string[] = [];
      const stop = tab.observe('shoot', 'demo', (answer) =>
        titles.push(answer.ok ? answer.value.title : answer.problem.kind),
      );
      const told = (count: number): Promise<void> =>
        vi.waitFor(() => expect(titles).toHaveLength(count));
      await told(1);
      await change(tab, 'ann', editShoot({ title: 'Mine' }));
      await told(2);
      await change(other, 'ben', editShoot({ title: 'Theirs' }));
      await told(3);
      await undo(tab, 'ann');
      await undo(other, 'ben');
      await told(4);
      await other.remove('shoot', 'demo');
      await told(5);
      stop();
      valueOf(await other.create('shoot', demoShoot()));
      await shootIn(tab);
      expect(titles).toEqual([demoShoot().title, 'Mine', 'Theirs', 'Mine', 'missing']);
    });

    test('an observer of one shoot hears nothing of another', async () => {
      const [tab, other] = await openedBy(openTwo);
      valueOf(await tab.create('shoot', { ...demoShoot(), id: 'second' }));
      const heard = vi.fn<(answer: unknown) => void>();
      const stop = tab.observe('shoot', 'second', heard);
      await vi.waitFor(() => expect(heard).toHaveBeenCalledTimes(1));
      await change(other, 'ben', editShoot({ title: 'Theirs' }));
      await other.edit({
        kind: 'shoot',
        id: 'second',
        edit: editShoot({ title: 'Second' }),
        label: '',
        stamp: stampOf('ben'),
      });
      await vi.waitFor(() => expect(heard).toHaveBeenCalledTimes(2));
      stop();
    });

    test('a setting is null before it was saved, and kept afterwards', async () => {
      const [tab, other] = openTwo();
      expect(valueOf(await tab.setting('tiles'))).toBeNull();
      valueOf(await tab.saveSetting('tiles', true));
      valueOf(await tab.saveSetting('current-shoot', 'demo'));
      expect(valueOf(await other.setting('tiles'))).toBe(true);
      expect(valueOf(await other.setting('current-shoot'))).toBe('demo');
    });

    test('a tab that undoes all it did leaves the shoot as it was, whatever it did', async () => {
      await fc.assert(
        fc.asyncProperty(fc.array(editArbitrary, { maxLength: 6 }), async (edits) => {
          const [tab] = await openedBy(openTwo);
          for (const [turn, random] of edits.entries())
            await change(tab, 'ann', random(await shootIn(tab), `new${turn}`));
          for (let back = await undo(tab, 'ann'); back.ok; back = await undo(tab, 'ann'))
            expect(back.value.leftAlone).toEqual([]);
          expect(await shootIn(tab)).toStrictEqual(demoShoot());
        }),
        { numRuns: 25 },
      );
    });
  });
};
