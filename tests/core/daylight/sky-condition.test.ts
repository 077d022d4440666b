import { describe, expect, test } from 'vitest';
import {
  cloudTransmittance,
  SKY_CONDITION_TRAITS,
  SKY_CONDITIONS,
} from '../../../src/core/daylight/sky-condition.ts';

describe('cloud takes light as Kasten and Czeplak measured (1980)', () => {
  test.each([
    [0, 1],
    [1, 0.9994],
    [2, 0.9933],
    [3, 0.9733],
    [4, 0.929],
    [5, 0.8483],
    [6, 0.718],
    [7, 0.5237],
    [8, 0.25],
  ])('%i oktas leave %f', (oktas, share) => {
    expect(Math.abs(cloudTransmittance(oktas) - share)).toBeLessThan(0.00006);
  });
});

test('the five conditions stand from bright to dark', () => {
  const factors = SKY_CONDITIONS.map((condition) => SKY_CONDITION_TRAITS[condition].cloudFactor);
  expect(factors).toEqual(factors.toSorted((first, second) => second - first));
});
