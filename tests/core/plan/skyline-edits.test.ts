import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { checkDocument } from '../../../src/core/plan/check-document.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Edit } from '../../../src/core/plan/edits.ts';
import { traceOf } from '../../../src/core/plan/setup-light.ts';
import { SHOOT, type Shoot, type Spot } from '../../../src/core/plan/shoot.ts';
import {
  addSkylinePoint,
  clearTerrain,
  clearTrace,
  removeSkylinePoint,
  setTerrain,
  tracePoints,
  traceRuns,
} from '../../../src/core/plan/skyline-edits.ts';
import { skylineAltitude } from '../../../src/core/skyline/skyline.ts';
import { defined } from '../../support/defined.ts';

const demo = demoShoot();
const edited = (edit: Edit<Shoot>, shoot: Shoot = demo): Shoot => produce(shoot, edit);
const pier = (shoot: Shoot): Spot => defined(shoot.spots['pier']);

const terrain = {
  altitudesDeg: Array.from({ length: 360 }, () => 3),
  origin: 'N45E012.hgt',
  dated: '2027-05-01',
  latitudeDeg: 45.65,
  longitudeDeg: 12.76,
  voidShare: 0.01,
};
const made = { idStem: 'new', origin: 'phone, held along the skyline', dated: '2027-05-02' };
const ridge = [
  { azimuthDeg: 300, altitudeDeg: 7 },
  { azimuthDeg: 310, altitudeDeg: 9 },
];

describe('each is one edit of one spot, and a document that passes the check', () => {
  test('terrain is set and taken away', () => {
    const set = edited(setTerrain('pier', terrain));
    expect(pier(set).terrain).toEqual(terrain);
    expect(checkDocument(SHOOT, set)).toMatchObject({ ok: true });
    expect(edited(clearTerrain('pier'), set)).toEqual(demo);
  });

  test('a run replaces the trace: flat beside it', () => {
    const traced = edited(traceRuns('pier', { ...made, way: 'replace', runs: [ridge] }));
    const altitude = skylineAltitude(traceOf(pier(traced)));
    expect([altitude(305), altitude(70), altitude(200)]).toEqual([8, 0, 0]);
    expect(pier(traced)).toMatchObject({ skylineOrigin: made.origin, skylineDated: '2027-05-02' });
    expect(checkDocument(SHOOT, traced)).toMatchObject({ ok: true });
    expect({ ...traced.spots, pier: demo.spots['pier'] }).toEqual(demo.spots);
  });

  test('a run is laid into the trace: other points keep id and place, both origins are named', () => {
    const traced = edited(traceRuns('pier', { ...made, way: 'add', runs: [ridge] }));
    const before = pier(demo);
    for (const [id, point] of Object.entries(before.skyline))
      if (point.azimuthDeg < 299 || point.azimuthDeg > 311)
        expect(pier(traced).skyline[id], id).toEqual(point);
    expect(skylineAltitude(traceOf(pier(traced)))(305)).toBe(8);
    expect(pier(traced).skylineOrigin).toBe(`${before.skylineOrigin}; ${made.origin}`);
    expect(checkDocument(SHOOT, traced)).toMatchObject({ ok: true });
  });

  test('points are taken as they are, alone or besides the others', () => {
    const alone = edited(tracePoints('pier', { ...made, way: 'replace', points: ridge }));
    expect(traceOf(pier(alone))).toEqual(ridge);
    const added = edited(tracePoints('pier', { ...made, way: 'add', points: ridge }));
    expect(traceOf(pier(added))).toEqual([...traceOf(pier(demo)), ...ridge]);
    expect(checkDocument(SHOOT, added)).toMatchObject({ ok: true });
  });

  test('the trace is taken away with its origin and date', () => {
    expect(pier(edited(clearTrace('pier')))).toMatchObject({
      skyline: {},
      skylineOrigin: '',
      skylineDated: '',
    });
  });

  test('a point comes and goes', () => {
    const drawn = edited(addSkylinePoint('pier', 'mast', { azimuthDeg: 200, altitudeDeg: 3 }));
    expect(pier(drawn).skyline['mast']).toEqual({ azimuthDeg: 200, altitudeDeg: 3 });
    expect(edited(removeSkylinePoint('pier', 'mast'), drawn)).toEqual(demo);
  });
});

test('what names a spot that is gone changes nothing', () => {
  for (const edit of [
    setTerrain('gone', terrain),
    clearTerrain('gone'),
    clearTrace('gone'),
    traceRuns('gone', { ...made, way: 'add', runs: [ridge] }),
    tracePoints('gone', { ...made, way: 'add', points: ridge }),
  ])
    expect(edited(edit)).toEqual(demo);
});
