import { describe, expect, test } from 'vitest';

import {
  comparisonRow,
  sortedRows,
  type ComparedDay,
} from '../../../../../src/app/screens/scout/compare/comparison-row.ts';
import { comparedInputs } from '../../../../../src/app/screens/scout/compare/use-comparison.ts';
import { sunDay } from '../../../../../src/app/screens/scout/sun-day.ts';
import { demoKit } from '../../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../../src/core/plan/demo-shoot.ts';
import type { Spot } from '../../../../../src/core/plan/shoot.ts';
import { emptyLightColumn } from '../../../../../src/core/spot/light-column.ts';
import { defined } from '../../../../support/defined.ts';

const shoot = demoShoot();
const pier = (fields: Partial<Spot> = {}): Spot => ({ ...defined(shoot.spots.pier), ...fields });
const sun = sunDay(pier(), shoot.date);

const MINUTE = 60_000;
const NOON = Date.UTC(2027, 4, 14, 10);

/** Four steps of ten minutes whose mean rises by one stop each. */
const day = (windows: ComparedDay['windows']): ComparedDay => {
  const steps = Float64Array.from([0, 10, 20, 30], (minutes) => NOON + minutes * MINUTE);
  const none = new Float64Array(4);
  const column = {
    ...emptyLightColumn(steps),
    meanEv: Float64Array.from([12, 13, 14, 15]),
    darkEv: Float64Array.from([11, 12, 13, 14]),
    brightEv: Float64Array.from([12.5, 13.5, 14.5, 17.5]),
    frameSpreadStops: Float64Array.from([0.8, 0.8, 0.8, 0.8]),
    referenceEv: none,
    reachEv: none,
    inHandStops: none,
    shortByStops: none,
    verdict: new Uint8Array(4),
    limitingRole: new Uint8Array(4),
  };
  return { column, windows };
};

const window = (fromMin: number, toMin: number): ComparedDay['windows'][number] => ({
  fromMs: NOON + fromMin * MINUTE,
  toMs: NOON + toMin * MINUTE,
  endedBy: null,
});

const windowText = (found: Parameters<typeof comparisonRow>[3]): string =>
  comparisonRow('pier', pier(), sun, found).cells.window.text;

const row = (
  name: string,
  fields: Partial<Spot>,
  found: ComparedDay,
): ReturnType<typeof comparisonRow> => comparisonRow(name, pier({ name, ...fields }), sun, found);

describe('a spot as a row', () => {
  test('the sky is its mean inside the window only, with its spread', () => {
    const { cells } = comparisonRow('pier', pier(), sun, day([window(5, 25)]));
    // Steps at 10 and 20 minutes: (13 + 14) / 2.
    expect(cells.sky).toEqual({ text: 'EV 13.5 ± 0.8', rank: 13.5 });
    expect(cells.evenness).toEqual({ text: '1.5 stops', rank: 1.5 });
    expect(cells.window.text).toBe('12:05 to 12:25');
  });

  test('a window between two steps takes the nearer of them', () => {
    const { cells } = comparisonRow('pier', pier(), sun, day([window(28, 29)]));
    expect(cells.sky.rank).toBe(15);
  });

  test('no window, no setup and no answer yet are told apart', () => {
    expect([day([]), 'no-lights' as const, null].map(windowText)).toEqual([
      'at no minute',
      'no setup here',
      '…',
    ]);
  });
});

describe('sorted by a column', () => {
  const rows = [
    row(
      'far',
      { walkInMin: 20, footTraffic: 'unknown', permission: 'refused' },
      day([window(0, 10)]),
    ),
    row('near', { walkInMin: 3, footTraffic: 'busy', permission: 'granted' }, day([])),
    row(
      'middle',
      { walkInMin: 9, footTraffic: 'quiet', permission: 'asked' },
      day([window(0, 30)]),
    ),
  ];
  const names = (key: Parameters<typeof sortedRows>[1]['key'], up = true): readonly string[] =>
    sortedRows(rows, { key, up }).map(({ name }) => name);

  test('the shorter walk first, or last', () => {
    expect(names('walk-in')).toEqual(['near', 'middle', 'far']);
    expect(names('walk-in', false)).toEqual(['far', 'middle', 'near']);
  });
  test('the longest window first; none at all is last either way', () => {
    expect(names('window')).toEqual(['middle', 'far', 'near']);
    expect(names('window', false)).toEqual(['far', 'middle', 'near']);
  });
  test('a granted permission before one that was asked for, a refusal last', () => {
    expect(names('permission')).toEqual(['near', 'middle', 'far']);
  });
  test('what is not known is last', () => {
    expect(names('foot-traffic')).toEqual(['middle', 'near', 'far']);
    expect(names('foot-traffic', false)).toEqual(['near', 'middle', 'far']);
  });
  test('names by the alphabet', () => expect(names('spot')).toEqual(['far', 'middle', 'near']));
});

describe('whose lights are compared', () => {
  test('its own: each spot is asked with its first setup', () => {
    const inputs = comparedInputs(shoot, demoKit(), 'own');
    const spotsWithSetup = new Set(Object.values(shoot.setups).map(({ spotId }) => spotId));
    expect(new Set(inputs.keys())).toEqual(spotsWithSetup);
  });

  test('carried: one setup stands at every spot, in that spot’s own framing', () => {
    const inputs = comparedInputs(shoot, demoKit(), 'quartet');
    expect(inputs.size).toBe(Object.keys(shoot.spots).length);
    for (const [spotId, { shoot: asked, setupId }] of inputs)
      expect(asked.setups[setupId]).toMatchObject({ spotId, framing: null });
    const lights = new Set(
      [...inputs.values()].map(({ shoot: asked, setupId }) =>
        JSON.stringify(asked.setups[setupId]?.lights),
      ),
    );
    expect(lights.size).toBe(1);
  });
});
