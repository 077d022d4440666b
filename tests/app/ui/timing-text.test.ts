import { describe, expect, test } from 'vitest';

import {
  flashTimeText,
  frameRateText,
  paceText,
  roundedPops,
} from '../../../src/app/ui/timing-text.ts';

describe('times of a flash and its pace in words', () => {
  test.each([
    [1 / 312, '1/310 s'],
    [1 / 20_000, '1/20000 s'],
    [0.03, '0.03 s'],
  ])('%d s is said %s', (durationS, text) => {
    expect(flashTimeText(durationS)).toBe(text);
  });

  test('a pace with a rest in it', () => {
    expect(
      paceText({
        lightId: 'key',
        recycleS: 0.55,
        popsPerCharge: 663,
        popsBeforeRest: 40,
        restS: 60,
        framesPerMinute: 29.3,
      }),
    ).toBe(
      'ready in 0.6 s, 29 frames a minute, about 660 pops a charge; 40 in a row, then 60 s of rest',
    );
  });

  test('a rate nobody reaches is not counted out', () => {
    expect(frameRateText(1200)).toBe('more than 180 frames a minute');
    expect(roundedPops(96)).toBe(96);
  });
});
