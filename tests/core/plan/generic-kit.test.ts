import { describe, expect, test } from 'vitest';

import {
  GENERIC_CAMERAS,
  GENERIC_FILTERS,
  GENERIC_HEADS,
  GENERIC_KIT_GELS,
  GENERIC_KIT_MODIFIERS,
  GENERIC_LENSES,
} from '../../../src/core/plan/generic-kit.data.ts';
import { CAMERA, FILTER, GEL, HEAD, LENS, MODIFIER } from '../../../src/core/plan/kit.ts';
import { defined } from '../../support/defined.ts';

const SHELVES = [
  { shelf: 'cameras', entries: GENERIC_CAMERAS, schema: CAMERA },
  { shelf: 'lenses', entries: GENERIC_LENSES, schema: LENS },
  { shelf: 'heads', entries: GENERIC_HEADS, schema: HEAD },
  { shelf: 'modifiers', entries: GENERIC_KIT_MODIFIERS, schema: MODIFIER },
  { shelf: 'filters', entries: GENERIC_FILTERS, schema: FILTER },
  { shelf: 'gels', entries: GENERIC_KIT_GELS, schema: GEL },
];

const modifier = (name: string) =>
  defined(GENERIC_KIT_MODIFIERS.find((one) => one.name.startsWith(name)));

describe('the ready entries of the kit', () => {
  test.each(SHELVES)(
    '$shelf pass the schema, each under a name of its own',
    ({ entries, schema }) => {
      expect(entries.length).toBeGreaterThan(0);
      for (const entry of entries)
        expect(schema.safeParse({ ...entry, order: 'n' }).success, entry.name).toBe(true);
      expect(new Set(entries.map(({ name }) => name)).size).toBe(entries.length);
    },
  );

  test('twice the watt-seconds never make less light', () => {
    const byEnergy = GENERIC_HEADS.toSorted(
      (one, other) => (one.energyWs ?? 0) - (other.energyWs ?? 0),
    );
    const numbers = byEnergy.map(({ guideNumberM }) => guideNumberM ?? 0);
    expect(numbers).toEqual(numbers.toSorted((one, other) => one - other));
  });

  test('a softbox with its diffuser loses 1 to 1.5 stops, with the baffle 1.5 to 2.5: ranges in circulation', () => {
    for (const name of ['Softbox, 60 × 60', 'Octabox, 95', 'Strip box']) {
      const { lossStops, diffuserStops, baffleStops } = modifier(name);
      const one = lossStops + defined(diffuserStops);
      expect(one).toBeGreaterThanOrEqual(1);
      expect(one).toBeLessThanOrEqual(1.5);
      expect(one + defined(baffleStops)).toBeGreaterThanOrEqual(1.5);
      expect(one + defined(baffleStops)).toBeLessThanOrEqual(2.5);
    }
  });

  test('the standard reflector, with which heads are rated, loses nothing; a long throw gains 1 to 2 stops', () => {
    expect(modifier('Hard reflector').lossStops).toBeCloseTo(0, 9);
    expect(modifier('Long-throw').lossStops).toBeGreaterThanOrEqual(-2);
    expect(modifier('Long-throw').lossStops).toBeLessThanOrEqual(-1);
  });

  test('an ND’s engraving says as many stops as the entry: a factor, or a density over 0.3', () => {
    for (const { kind, name, stops, engraving } of GENERIC_FILTERS) {
      if (kind !== 'nd') continue;
      const engraved = engraving.startsWith('ND')
        ? Math.log2(Number(engraving.slice(2)))
        : Number(engraving) / 0.3;
      expect(engraved, name).toBeCloseTo(stops, 6);
      expect(name).toContain(`${stops} stop`);
    }
  });
});
