import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import {
  addLight,
  addSetup,
  addSpot,
  editKitItem,
  editLight,
  editSetup,
  editSetupFraming,
  editShoot,
  editSpot,
  editSpotFraming,
  putKitItem,
  removeKitItem,
  removeLight,
  removeSetup,
  removeSpot,
  together,
  type Edit,
} from '../../../src/core/plan/edits.ts';
import { addSkylinePoint, removeSkylinePoint } from '../../../src/core/plan/skyline-edits.ts';
import type { Kit } from '../../../src/core/plan/kit.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import { defined } from '../../support/defined.ts';

const edited = (edit: Edit<Shoot>): Shoot => produce(demoShoot(), edit);
const kitEdited = (edit: Edit<Kit>): Kit => produce(demoKit(), edit);
const demo = demoShoot();

describe('an edit changes what it names and nothing else', () => {
  test('title, date and condition of the shoot', () => {
    expect(edited(editShoot({ date: '2027-06-01' }))).toEqual({ ...demo, date: '2027-06-01' });
  });

  test('a spot, its framing, a point of its skyline', () => {
    expect(edited(editSpot('pier', { name: 'Mole' })).spots.pier).toEqual({
      ...demo.spots.pier,
      name: 'Mole',
    });
    const turned = edited(editSpotFraming('pier', { bearingDeg: 10 }));
    expect(turned.spots.pier?.framing).toEqual({ ...demo.spots.pier?.framing, bearingDeg: 10 });
    expect(turned.spots.karst).toEqual(demo.spots.karst);
    const point = { azimuthDeg: 200, altitudeDeg: 3 };
    const drawn = edited(addSkylinePoint('pier', 'mast', point));
    expect(drawn.spots.pier?.skyline.mast).toEqual(point);
    expect(produce(drawn, removeSkylinePoint('pier', 'mast'))).toEqual(demo);
  });

  test('a setup that turns its own camera leaves its spot’s framing alone', () => {
    const turned = edited(editSetupFraming('quartet', { bearingDeg: 280 }));
    expect(turned.spots).toEqual(demo.spots);
    expect(turned.setups.quartet?.framing).toEqual({
      ...demo.spots.pier?.framing,
      bearingDeg: 280,
    });
    const again = produce(turned, editSetupFraming('quartet', { tiltDeg: 20 }));
    expect(again.setups.quartet?.framing).toMatchObject({ bearingDeg: 280, tiltDeg: 20 });
  });

  test('a setup and its lights', () => {
    expect(edited(editSetup('cello', { holdStops: 3 })).setups.cello?.holdStops).toBe(3);
    expect(edited(editLight('quartet', 'key', { angleDeg: 70 })).setups.quartet?.lights).toEqual({
      ...demo.setups.quartet?.lights,
      key: { ...demo.setups.quartet?.lights.key, angleDeg: 70 },
    });
    const key = defined(demo.setups.quartet?.lights.key);
    const lit = edited(addLight('cello', 'rim', key));
    expect(lit.setups.cello?.lights.rim).toEqual(key);
    expect(produce(lit, removeLight('cello', 'rim'))).toEqual(demo);
  });

  test('what was added and taken away again leaves the document as it was', () => {
    const spot = defined(demo.spots.pier);
    const setup = defined(demo.setups.cello);
    expect(edited(together(addSpot('new', spot), removeSpot('new')))).toEqual(demo);
    expect(edited(together(addSetup('new', setup), removeSetup('new')))).toEqual(demo);
  });

  test('a spot goes with its setups, and with no others', () => {
    const gone = edited(removeSpot('pier'));
    expect(Object.keys(gone.spots)).toEqual(['lighthouse', 'karst', 'arches']);
    expect(Object.keys(gone.setups)).toEqual(['two-violins', 'cello', 'viola']);
  });

  test('items of the kit', () => {
    const camera = defined(demoKit().cameras.camera);
    const put = kitEdited(putKitItem('cameras', 'second', { ...camera, name: 'Second' }));
    expect(put.cameras.second?.name).toBe('Second');
    expect(produce(put, removeKitItem('cameras', 'second'))).toEqual(demoKit());
    const changed = kitEdited(editKitItem('heads', 'head-400', { guideNumberM: 50 }));
    expect(changed.heads['head-400']).toEqual({
      ...demoKit().heads['head-400'],
      guideNumberM: 50,
    });
  });
});

test('an edit of what is not there changes nothing', () => {
  for (const edit of [
    editSpot('gone', { name: 'x' }),
    editSpotFraming('gone', { tiltDeg: 1 }),
    editSetupFraming('gone', { tiltDeg: 1 }),
    editSetup('gone', { holdStops: 1 }),
    addLight('gone', 'key', defined(demo.setups.cello?.lights.key)),
    editLight('cello', 'gone', { distanceM: 1 }),
    removeLight('gone', 'key'),
    addSkylinePoint('gone', 'a', { azimuthDeg: 1, altitudeDeg: 1 }),
    removeSkylinePoint('gone', 'a'),
  ])
    expect(edited(edit)).toEqual(demo);
  expect(kitEdited(editKitItem('heads', 'gone', { owned: 2 }))).toEqual(demoKit());
});
