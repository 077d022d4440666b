import { describe, expect, test } from 'vitest';

import { headWithModifier, partsStops } from '../../../src/core/plan/modified-head.ts';
import type { Gel, Head, Modifier, Reading } from '../../../src/core/plan/kit.ts';

const bare = { diffuser: false, baffle: false, grid: false };

const head = (changes: Partial<Head> = {}): Head => ({
  order: 'n',
  name: 'Head',
  owned: 1,
  energyWs: 400,
  guideNumberM: 60,
  readings: {},
  scale: 'fraction',
  fullPowerNumber: 10,
  stepStops: 0.1,
  minPowerStops: -8,
  hssLossStops: 2,
  hssMeasured: false,
  flashDurationS: null,
  flashDurationLowestS: null,
  burstPops: null,
  burstRestS: 0,
  batteryId: null,
  flashKelvin: 5600,
  massKg: 2,
  recycleS: 1,
  popsPerCharge: 300,
  ...changes,
});

/** A round box 1.2 m wide. */
const box: Modifier = {
  order: 'n',
  name: 'Box',
  lossStops: 0.1,
  lossSpreadStops: 0.3,
  widthM: 1.2,
  heightM: 1.2,
  round: true,
  diffuserStops: 1.2,
  baffleStops: 0.8,
  gridStops: null,
  beamDeg: null,
  gridBeamDeg: null,
  settings: {},
  massKg: 1,
};

const reading: Reading = {
  fNumber: 8,
  iso: 100,
  distanceM: 2,
  ambientFNumber: null,
  powerStops: 0,
  ...bare,
  diffuser: true,
};

const gel: Gel = { order: 'n', name: 'Warm', stops: 0.7, miredShift: 159, greenStops: 0 };

const made = (changes: Partial<Parameters<typeof headWithModifier>[0]>) =>
  headWithModifier({
    head: head(),
    modifier: box,
    modifierId: 'box',
    gel: null,
    light: bare,
    ...changes,
  });

describe('what a head gives through a modifier', () => {
  test('its guide number less modifier, diffuser, baffle and gel, which add in stops', () => {
    const light = { ...bare, diffuser: true, baffle: true };
    const figure = made({ light, gel });
    expect(figure.guideNumberM).toBe(60);
    expect(figure.lossStops).toBeCloseTo(0.1 + 1.2 + 0.8 + 0.7, 12);
    expect(figure.sourceDiameterM).toBeCloseTo(1.2, 12);
    expect(figure.origin).toBe('guide-number');
  });

  test('a part that the modifier does not have costs nothing', () => {
    expect(partsStops(box, { ...bare, grid: true })).toBe(0);
  });

  test('one reading comes before the guide number: f/8 at 2 m from a face 0.6 m in radius is 8 √(4 + 0.36)', () => {
    const figure = made({
      head: head({ readings: { box: reading } }),
      light: { ...bare, diffuser: true },
    });
    expect(figure.guideNumberM).toBeCloseTo(8 * Math.sqrt(4.36), 9);
    expect(figure.lossStops).toBe(0);
    expect(figure.origin).toBe('metered');
  });

  test('a reading at half power and ISO 200 with ambient f/2.8 on it: (8² − 2.8²) / 2 × 2', () => {
    const read = { ...reading, iso: 200, powerStops: -1, ambientFNumber: 2.8 };
    const figure = made({ head: head({ readings: { box: read } }), light: reading });
    // ISO 200 halves what ISO 100 would show, half power doubles it again.
    expect(figure.guideNumberM).toBeCloseTo(Math.sqrt((64 - 7.84) * 4.36), 9);
  });

  test('parts changed since the reading are added or taken off, and the figure is less certain', () => {
    const metered = head({ readings: { box: reading } });
    const asRead = made({ head: metered, light: { ...bare, diffuser: true } });
    const off = made({ head: metered, light: bare });
    const more = made({ head: metered, light: { ...bare, diffuser: true, baffle: true } });
    expect(off.lossStops).toBeCloseTo(-1.2, 12);
    expect(more.lossStops).toBeCloseTo(0.8, 12);
    expect(off.spreadStops).toBeGreaterThan(asRead.spreadStops);
  });

  test('a reading with another modifier does not count for this one', () => {
    expect(made({ head: head({ readings: { other: reading } }) }).origin).toBe('guide-number');
  });

  test('watt-seconds stand in for a guide number, and twice as many are one stop', () => {
    const weak = made({ head: head({ guideNumberM: null, energyWs: 200 }) });
    const strong = made({ head: head({ guideNumberM: null, energyWs: 400 }) });
    expect(weak.origin).toBe('watt-seconds');
    expect(2 * Math.log2(strong.guideNumberM / weak.guideNumberM)).toBeCloseTo(1, 12);
    expect(weak.spreadStops).toBeGreaterThan(made({}).spreadStops);
  });

  test('a head without any figure counts for less than the smallest flash in the kit', () => {
    const unknown = made({ head: head({ guideNumberM: null, energyWs: null }) });
    expect(unknown.guideNumberM).toBeGreaterThan(0);
    expect(unknown.guideNumberM).toBeLessThan(
      made({ head: head({ guideNumberM: null, energyWs: 76 }) }).guideNumberM,
    );
  });
});
