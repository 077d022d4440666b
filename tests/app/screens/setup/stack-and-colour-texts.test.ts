import { describe, expect, test } from 'vitest';

import {
  costText,
  miredWords,
  missText,
  seenText,
  whiteBalanceText,
} from '../../../../src/app/screens/setup/colour-text.ts';
import {
  depthText,
  evenText,
  focusText,
  graduatedFaceText,
  graduationText,
  polariserText,
  shiftText,
  threadText,
} from '../../../../src/app/screens/setup/stack-text.ts';
import { filterText } from '../../../../src/app/ui/recipe-text.ts';
import {
  filterStackFigures,
  type StackedFilter,
} from '../../../../src/core/colour/filter-stack.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import type { ColourChoice } from '../../../../src/core/plan/colour-choices.ts';
import type { LensStack } from '../../../../src/core/plan/lens-stack.ts';
import { polariserRange } from '../../../../src/core/sky/polarised-sky.ts';
import { defined } from '../../../support/defined.ts';

const stack = (roomMm: number, filters: readonly StackedFilter[]): LensStack => ({
  filters: [],
  figures: filterStackFigures(filters),
  evenStops: 0,
  roomMm,
  threads: [],
  focus: { faceEv: 0, limitEv: 0 },
  polariser: null,
  graduated: null,
  shutByStops: 0,
});

describe('words of a stack', () => {
  const filter: StackedFilter = {
    kind: 'nd',
    stops: 2,
    maxStops: null,
    miredShift: 0,
    greenStops: 0,
    ringMm: 5,
  };

  test('stops come with their density', () =>
    // Density table: 5 stops are 1.5.
    expect(evenText(5)).toBe('In all 5.0 stops (1.5) from flash and ambient alike'));

  test('colour is in mired and in stops of green', () => {
    const blue = { ...filter, miredShift: -131 };
    expect(shiftText(filterStackFigures([blue]))).toBe('131 mired bluer');
    expect(shiftText(filterStackFigures([{ ...filter, greenStops: -0.7 }]))).toBe(
      '0.7 stops of green less',
    );
    expect(shiftText(filterStackFigures([filter]))).toBe('no colour of its own');
  });

  test('a stack deeper than there is room for cuts the corners', () => {
    expect(depthText(stack(5, [filter, filter]))).toContain('the corners are cut');
    expect(depthText(stack(10, [filter, filter]))).not.toContain('the corners are cut');
  });

  test('threads are named by what has to be done', () => {
    const nd = defined(demoKit().filters['nd-2']);
    expect(threadText(nd, 'fits')).toBeNull();
    expect(threadText(nd, 'step-ring')).toContain('step ring');
    expect(threadText(nd, 'cuts-corners')).toContain('cut the corners');
  });

  test('autofocus works, hunts, or needs a lamp', () => {
    expect(focusText({ faceEv: 4, limitEv: -4 })).toContain('8.0 left, it works');
    expect(focusText({ faceEv: -3, limitEv: -4 })).toContain('it will hunt');
    expect(focusText({ faceEv: -6, limitEv: -4 })).toContain('2.0 too dark');
    expect(focusText({ faceEv: -Infinity, limitEv: -4 })).toContain('torch');
  });

  test('a polariser is a range with the middle that is counted on', () => {
    expect(polariserText(polariserRange(0.75))).toBe(
      '−0.8 to +2.0 stops beyond its even loss by how it is turned, counted as +0.6',
    );
    expect(polariserText(polariserRange(0))).toBe('nothing beyond its even loss');
  });

  test('a graduated filter says where it darkens and what it does to heads', () => {
    const graduated = {
      stops: 2,
      fromFraction: -0.025,
      toFraction: 0.225,
      patchStops: 1,
      frameStops: 0.5,
      faceStops: 0,
      crownStops: 0,
    };
    expect(graduationText(graduated)).toBe('from 3 % under the centre up to 23 % over the centre');
    expect(graduatedFaceText(graduated)).toBe('the heads are clear of it');
    expect(graduatedFaceText({ ...graduated, crownStops: 0.3 })).toContain(
      'top of the head loses 0.3',
    );
    expect(graduatedFaceText({ ...graduated, faceStops: 0.6, crownStops: 0.9 })).toContain(
      'the face loses 0.6 stops',
    );
  });

  test('a variable ND is written at what it is set to', () =>
    expect(
      filterText({
        ...defined(demoKit().filters['nd-2']),
        kind: 'variable-nd',
        name: 'Variable ND',
        stops: 10 / 3,
        engraving: '',
      }),
    ).toBe('Variable ND at 3.3 stops (1.0)'));
});

const seen = (warmerMired: number, greener = 0, isBeyondKelvin = false) =>
  seenText({ warmerMired, greener, isBeyondKelvin });

describe('words of colour', () => {
  test('a white balance is kelvin, and a tint where it has one', () => {
    expect(whiteBalanceText({ kelvin: 5600, tint: 0 })).toBe('5600 K');
    expect(whiteBalanceText({ kelvin: 3200, tint: -12 })).toBe('3200 K, tint 12 to green');
  });

  test('what is not seen is neutral, the rest is said in mired and green', () => {
    expect(seen(6)).toBe('neutral');
    expect(seen(-134)).toBe('134 mired bluer');
    expect(seen(21, 7)).toBe('21 mired warmer and 7 greener');
    expect(seen(0, -9)).toBe('9 more magenta');
    // Off the end of the locus its distance says nothing about green.
    expect(seen(-150, -14, true)).toBe('more than 150 mired bluer');
    expect(seen(-4, 0, true)).toBe('more than 4 mired bluer');
  });

  test('mired have words, bluer and warmer', () => {
    expect(miredWords(0)).toBe('left as it is');
    expect(miredWords(131)).toBe('strongly bluer');
    expect(miredWords(-20)).toBe('a touch warmer');
  });

  test('a miss says which way', () => {
    expect(missText(0.3)).toBe('as asked');
    expect(missText(-5)).toBe('5 mired warmer than asked');
  });

  test('a cost says what remains', () => {
    const choice = { gelStops: 1.09, inHandStops: -0.4, works: false } as ColourChoice;
    expect(costText(choice)).toBe('costs the flash 1.1 stops: short by 0.4');
    expect(costText({ ...choice, gelStops: 0, inHandStops: 0.7, works: true })).toBe(
      'costs the flash nothing: 0.7 in hand',
    );
  });
});
