import { describe, expect, test } from 'vitest';

import {
  countText,
  directionText,
  discText,
  holdText,
  missText,
  noDateText,
  pointText,
  spanText,
} from '../../../../../src/app/screens/scout/sun-in-picture/alignment-text.ts';
import type { AlignmentHold } from '../../../../../src/core/plan/alignment-light.ts';

const rome = { body: 'sun', zone: 'Europe/Rome' } as const;
const hold: AlignmentHold = {
  verdict: 'works',
  inHandStops: 0.6,
  shortByStops: 0,
  role: null,
  referenceEv: 14,
  referenceSpreadStops: 0.7,
};

const on = (date: string): { date: string } => ({ date });

describe('why there is no date', () => {
  test('a ridge over the point says how much of it', () => {
    expect(noDateText({ kind: 'below-skyline', skylineDeg: 8.2, pointDeg: 5 }, rome)).toBe(
      'The point is below the skyline: 3.2° of ground stand there.',
    );
  });
  test('with nothing on the horizon it is the horizon', () => {
    expect(noDateText({ kind: 'below-skyline', skylineDeg: 0, pointDeg: -1.8 }, rome)).toBe(
      'The point is below the horizon, by 1.8°.',
    );
  });
  test('too far off names the nearest date and minute in the spot’s zone', () => {
    const nearest = {
      instantMs: Date.UTC(2027, 5, 21, 17, 2),
      azimuthDeg: 297,
      altitudeDeg: 20,
      missDeg: 4.12,
      date: '2027-06-21',
    };
    expect(noDateText({ kind: 'never-near', nearest }, rome)).toBe(
      'The sun never comes nearer than 4.1°, on Mon 21 Jun 2027 at 19:02.',
    );
    expect(
      noDateText({ kind: 'never-near', nearest: { ...nearest, altitudeDeg: -3 } }, rome),
    ).toContain('It is 3.0° below the horizon then.');
  });
  test('hidden says on how many dates', () => {
    expect(noDateText({ kind: 'hidden', hiddenDates: 9 }, { ...rome, body: 'moon' })).toBe(
      'The moon passes there on 9 dates, each time behind the skyline.',
    );
    expect(noDateText({ kind: 'hidden', hiddenDates: 1 }, rome)).toContain('on one date,');
  });
  test('what cannot be used is handed on', () => {
    expect(noDateText({ kind: 'bad-input', sentences: ['First.', 'Second.'] }, rome)).toBe(
      'First. Second.',
    );
  });
});

describe('what a date says', () => {
  test('where the point is', () => {
    expect(pointText({ xFraction: 0.2, yFraction: -0.105 })).toBe(
      '20 % right of the centre, 10.5 % below it',
    );
    expect(directionText({ azimuthDeg: 285.3, altitudeDeg: 4.2 })).toBe('285° WNW, 4.2° up');
    expect(directionText({ azimuthDeg: 90, altitudeDeg: -2 })).toBe('90° E, 2.0° below the level');
  });
  test('how far it misses, on the sky and in the picture', () => {
    const best = {
      instantMs: 0,
      azimuthDeg: 285,
      altitudeDeg: 4,
      missDeg: 0.123,
      inPicture: { xFraction: 0.198, yFraction: 0.101 },
    };
    expect(missText(best, { xFraction: 0.2, yFraction: 0.1 })).toBe(
      '0.12° off the point: 0.2 % of the width left, 0.1 % of the height high',
    );
    expect(missText({ ...best, inPicture: null }, { xFraction: 0.2, yFraction: 0.1 })).toBe(
      '0.12° off the point',
    );
  });
  test('from when to when, in the spot’s zone', () => {
    const firstMs = Date.UTC(2027, 4, 14, 17, 29);
    expect(spanText({ firstMs, lastMs: firstMs + 240_000 }, 'Europe/Rome')).toBe('19:29 to 19:33');
    expect(spanText({ firstMs, lastMs: firstMs }, 'Europe/Rome')).toBe('19:29');
  });
  test('what is in hand with its spread, or what falls short', () => {
    expect(holdText(hold)).toBe('0.6 in hand ± 0.7');
    expect(holdText({ ...hold, verdict: 'sky-above-reach', shortByStops: 1.2, role: 'fill' })).toBe(
      'short by 1.2, fill runs out first',
    );
    expect(holdText({ ...hold, inHandStops: Infinity })).toBe('works: nothing has to be lit');
  });
  test('how much of the disc stands over the skyline', () => {
    expect(discText(1)).toBe('the whole disc over the skyline');
    expect(discText(0.42)).toBe('0.4 of the disc over the skyline');
  });
  test('how many dates there are, and how many the skyline takes', () => {
    expect(countText([on('a'), on('b')], 0)).toBe('2 dates.');
    expect(countText([on('a')], 1)).toBe(
      '1 date. On 1 date more it passes there behind the skyline.',
    );
    expect(countText([on('a'), on('a'), on('b')], 0)).toBe('3 times on 2 dates.');
  });
});
