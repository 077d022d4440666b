import { describe, expect, test } from 'vitest';

import { airClass, sparesTooMany } from '../../../src/core/plan/air-travel.ts';

describe('lithium batteries in the air, by the published limits', () => {
  // IATA table 2.3.A as airlines print it: up to 100 Wh, 100 to 160 Wh with approval and two
  // spares, above that not with passengers.
  test.each([
    ['11.1 V × 4.5 Ah', 11.1 * 4.5, 'cabin'],
    ['100 Wh', 100, 'cabin'],
    ['101 Wh', 101, 'ask-carrier'],
    ['160 Wh', 160, 'ask-carrier'],
    ['161 Wh', 161, 'not-in-cabin'],
  ] as const)('%s: %s', (_name, wattHours, expected) => {
    expect(airClass(wattHours)).toBe(expected);
  });

  test('two spares of 130 Wh may come along, a third is one too many; smaller ones are not counted', () => {
    expect(sparesTooMany({ wattHours: 130, spares: 2 })).toBe(0);
    expect(sparesTooMany({ wattHours: 130, spares: 3 })).toBe(1);
    expect(sparesTooMany({ wattHours: 90, spares: 5 })).toBe(0);
  });
});
