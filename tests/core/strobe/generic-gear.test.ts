import { describe, expect, test } from 'vitest';
import { GENERIC_GELS } from '../../../src/core/strobe/gel.data.ts';
import { gelLossStops } from '../../../src/core/strobe/gel.ts';
import { GENERIC_ADD_ONS, GENERIC_MODIFIERS } from '../../../src/core/strobe/modifier.data.ts';

const gel = (name: string, family: string): (typeof GENERIC_GELS)[number] | undefined =>
  GENERIC_GELS.find((entry) => entry.name === name && entry.family === family);

describe('generic modifiers', () => {
  // A practitioner's metering of one small flash at 6 feet (H1), against the ranges in circulation:
  // these are one pair of hands, so the range must merely hold them.
  test.each([
    ['umbrella-white', 2.2],
    ['umbrella-shoot-through', 1.8],
    ['softbox-one-diffuser', 0.9],
  ] as const)('the range of %s holds the metered loss of %d stops', (id, metered) => {
    const { low, high } = GENERIC_MODIFIERS[id].lossStops;
    expect(metered).toBeGreaterThanOrEqual(low);
    expect(metered).toBeLessThanOrEqual(high);
  });

  test('middles lie inside their ranges, sizes are sizes', () => {
    for (const { lossStops } of [
      ...Object.values(GENERIC_MODIFIERS),
      ...Object.values(GENERIC_ADD_ONS),
    ]) {
      expect(lossStops.middle).toBeGreaterThanOrEqual(lossStops.low);
      expect(lossStops.middle).toBeLessThanOrEqual(lossStops.high);
    }
    for (const { widthM, heightM } of Object.values(GENERIC_MODIFIERS)) {
      expect(Math.min(widthM, heightM)).toBeGreaterThan(0.05);
      expect(Math.max(widthM, heightM)).toBeLessThan(2);
    }
  });
});

describe('generic gels', () => {
  // What 5500 K flash becomes, from the two families' published tables.
  test.each([
    ['Full CTO', 'A', 2867],
    ['Full CTO', 'B', 2934],
    ['1/2 CTO', 'A', 3805],
    ['1/2 CTO', 'B', 3439],
    ['1/4 CTO', 'A', 4468],
    ['1/8 CTO', 'B', 4812],
    ['Full CTB', 'A', 19678],
    ['1/2 CTB', 'B', 9632],
    ['1/8 CTB', 'A', 5889],
  ])('%s of family %s turns 5500 K into %d K', (name, family, kelvin) => {
    const shift = gel(name, family)?.miredShift ?? Number.NaN;
    expect(Math.abs(1e6 / (1e6 / 5500 + shift) - kelvin) / kelvin).toBeLessThan(1e-3);
  });

  test('full CTO of the darker family costs 1.1 stops, full CTB about 1.5 (a lighting column of 2008)', () => {
    expect(Math.abs(gelLossStops(gel('Full CTO', 'A') ?? { transmission: 1 }) - 1.1)).toBeLessThan(
      0.05,
    );
    expect(Math.abs(gelLossStops(gel('Full CTB', 'A') ?? { transmission: 1 }) - 1.5)).toBeLessThan(
      0.05,
    );
  });

  test('half CTO differs by 28 mired between families: the shift decides, not the name', () => {
    expect((gel('1/2 CTO', 'B')?.miredShift ?? 0) - (gel('1/2 CTO', 'A')?.miredShift ?? 0)).toBe(
      28,
    );
  });
});
