import fc from 'fast-check';
import { expect, test } from 'vitest';

import { orderKeyAtEnd, orderKeyBetween } from '../../../src/core/plan/order-key.ts';
import { orderKeysAtEnd } from '../../../src/core/plan/order-keys-at-end.ts';
import { order } from '../../support/field-arbitraries.ts';

test('many new last entries stand in their order behind the others, and another still fits behind and between them', () => {
  fc.assert(
    fc.property(
      fc.dictionary(fc.string(), fc.record({ order: order.filter((key) => !key.endsWith('a')) }), {
        maxKeys: 4,
      }),
      fc.integer({ min: 0, max: 700 }),
      (entries, count) => {
        const keys = orderKeysAtEnd(entries, count);
        const before = Object.values(entries).map((entry) => entry.order);
        const all = [...before.toSorted(), ...keys];
        expect(keys.length).toBe(count);
        expect(all).toEqual(all.toSorted());
        expect(new Set(keys).size).toBe(count);
        // A key that ends in the lowest letter leaves no room before it.
        expect(keys.filter((key) => key.endsWith('a'))).toEqual([]);
        for (const [index, key] of keys.entries()) {
          const next = keys[index + 1] ?? '';
          const between = orderKeyBetween(key, next);
          expect(key < between && (next === '' || between < next)).toBe(true);
        }
        const after = Object.fromEntries(all.map((key, index) => [String(index), { order: key }]));
        if (all.length > 0) expect(orderKeyAtEnd(after) > (all.at(-1) ?? '')).toBe(true);
      },
    ),
  );
});

test('five thousand keys after five thousand others, ten times over, stay short enough to be kept', () => {
  let last = '';
  for (let times = 0; times < 10; times += 1)
    last = orderKeysAtEnd({ one: { order: last || 'n' } }, 5000).at(-1) ?? '';
  expect(last.length).toBeLessThanOrEqual(80);
});
