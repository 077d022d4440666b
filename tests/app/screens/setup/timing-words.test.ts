import { describe, expect, test } from 'vitest';

import { clippedText, frozenText } from '../../../../src/app/screens/setup/timing-words.ts';

describe('a flash against shutter and movement in words', () => {
  test('what is cut off is said in stops, and not below what a meter shows', () => {
    expect(clippedText(0.249)).toBe('0.2 stop');
    expect(clippedText(0.04)).toBe('less than a tenth of a stop');
  });

  test('inside one circle of confusion someone is frozen, outside the blur is said', () => {
    expect(frozenText(0.9, 'walking')).toBe('it freezes someone walking across');
    expect(frozenText(2.04, 'running')).toBe(
      'someone running across blurs 2.0 times as wide as sharp',
    );
    expect(frozenText(14.6, 'jumping')).toBe('a jump blurs 15 times as wide as sharp');
  });
});
