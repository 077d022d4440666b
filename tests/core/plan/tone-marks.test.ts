import { describe, expect, test } from 'vitest';

import { editLight } from '../../../src/core/plan/edits.ts';
import { CLIPPING_STOPS, toneMarks, type ToneMark } from '../../../src/core/plan/tone-marks.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const at = (marks: readonly ToneMark[], name: ToneMark['name']): number =>
  defined(marks.find((mark) => mark.name === name)).stops;

const fillUnder = editLight('quartet', 'fill', { stops: -1.6 });

describe('marks on the tone scale', () => {
  test('an 18 % card clips 2.47 stops up in a plain encoding', () => {
    expect(CLIPPING_STOPS).toBeCloseTo(2.474, 3);
  });

  const view = viewOfMinute(demoMinute('quartet', '20:00', 'broken-cloud', fillUnder));
  const marks = toneMarks(view);

  test('the patch lies as far under mid-grey as the sky is held, and mean and extremes keep their distance to it', () => {
    const sky = defined(view.light.skyInFrame);
    expect(Math.abs(at(marks, 'patch') + 2)).toBeLessThanOrEqual(1 / 6);
    expect(at(marks, 'sky-mean') - at(marks, 'patch')).toBeCloseTo(sky.meanEv - sky.patchEv, 9);
    expect(at(marks, 'sky-darkest') - at(marks, 'patch')).toBeCloseTo(sky.darkEv - sky.patchEv, 9);
    expect(at(marks, 'sky-brightest') - at(marks, 'patch')).toBeCloseTo(
      sky.brightEv - sky.patchEv,
      9,
    );
  });

  test('the sun in the frame clips at any hold', () => {
    expect(at(marks, 'sun')).toBe(Infinity);
    const dusk = toneMarks(viewOfMinute(demoMinute('quartet', '20:42', 'broken-cloud')));
    expect(dusk.some(({ name }) => name === 'sun')).toBe(false);
  });

  test('card, fill side and unlit face lie where the setup asks them', () => {
    expect(Math.abs(at(marks, 'card'))).toBeLessThanOrEqual(1 / 6);
    expect(Math.abs(at(marks, 'fill-side') + 1.6)).toBeLessThanOrEqual(1 / 6);
    expect(at(marks, 'unlit-face')).toBeLessThan(-2);
    expect(at(marks, 'unlit-face-sun-out')).toBeGreaterThan(at(marks, 'unlit-face'));
  });

  test('nearest and farthest face of the row lie round the card as the key falls off', () => {
    const { faces } = defined(view.sources.find(({ light }) => light.role === 'key'));
    expect(at(marks, 'nearest-face') - at(marks, 'farthest-face')).toBeCloseTo(
      faces.spreadStops,
      9,
    );
    const single = toneMarks(viewOfMinute(demoMinute('viola', '18:20', 'broken-cloud')));
    expect(single.some(({ name }) => name === 'nearest-face')).toBe(false);
  });

  test('a rim has its own mark with its light’s name', () => {
    const violins = toneMarks(viewOfMinute(demoMinute('two-violins', '07:30', 'clear')));
    const rim = defined(violins.find(({ name }) => name === 'rim'));
    expect(rim.lightId).toBe('rim');
    expect(Math.abs(rim.stops + 0.5)).toBeLessThanOrEqual(1 / 6);
  });

  test('they come brightest first, and there are none while there is no recipe', () => {
    const stops = marks.map((mark) => mark.stops);
    expect(stops).toEqual(stops.toSorted((one, other) => other - one));
    expect(toneMarks(viewOfMinute(demoMinute('quartet', '19:00', 'clear')))).toEqual([]);
  });
});

const minute = (clock: string, condition: 'clear' | 'broken-cloud' = 'clear') =>
  viewOfMinute(demoMinute('quartet', clock, condition));

describe('skins, shirt, ground and the sun on an edge', () => {
  test('a white shirt of 85 % under the key lies 2.2 stops over the card: under the clipping point', () => {
    const marks = toneMarks(minute('20:00', 'broken-cloud'));
    // log2(0.85 / 0.18).
    expect(at(marks, 'white-shirt') - at(marks, 'card')).toBeCloseTo(2.24, 2);
    expect(at(marks, 'white-shirt')).toBeLessThan(CLIPPING_STOPS);
  });

  test('skins of 12 and 45 % lie 0.6 under and 1.3 over the card', () => {
    const marks = toneMarks(minute('20:00', 'broken-cloud'));
    // log2(0.12 / 0.18), log2(0.45 / 0.18); light skin about one over, practitioners' pages.
    expect(at(marks, 'darkest-skin') - at(marks, 'card')).toBeCloseTo(-0.585, 3);
    expect(at(marks, 'lightest-skin') - at(marks, 'card')).toBeCloseTo(1.322, 3);
  });

  test('the ground lies under the sky it is lit by', () => {
    const marks = toneMarks(minute('20:00', 'broken-cloud'));
    expect(at(marks, 'ground')).toBeLessThan(at(marks, 'sky-mean'));
  });

  test('the low sun behind the quartet strikes an edge far over the card; after sunset there is none', () => {
    const marks = toneMarks(minute('20:00', 'broken-cloud'));
    expect(at(marks, 'sun-edge')).toBeGreaterThan(at(marks, 'unlit-face') + 2);
    const dusk = toneMarks(minute('20:42', 'broken-cloud'));
    expect(dusk.some(({ name }) => name === 'sun-edge')).toBe(false);
  });
});
