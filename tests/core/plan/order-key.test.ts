import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  inOrder,
  inWrittenOrder,
  orderKeyAtEnd,
  orderKeyBetween,
} from '../../../src/core/plan/order-key.ts';

describe('order keys', () => {
  test('entries put in anywhere stay where they were put, and every key is one that the schema takes', () => {
    const places = fc.array(fc.nat(), { minLength: 1, maxLength: 80 });
    fc.assert(
      fc.property(places, (drawnPlaces) => {
        const keys: string[] = [];
        const wanted: number[] = [];
        drawnPlaces.forEach((drawn, entry) => {
          const place = drawn % (keys.length + 1);
          keys.splice(place, 0, orderKeyBetween(keys[place - 1] ?? '', keys[place] ?? ''));
          wanted.splice(place, 0, entry);
        });
        expect(keys.toSorted()).toEqual(keys);
        expect(new Set(keys).size).toBe(keys.length);
        for (const key of keys) expect(key).toMatch(/^[a-z]{1,80}$/);
        const entries = Object.fromEntries(
          keys.map((order, place) => [`entry-${wanted[place]}`, { order }]),
        );
        expect(inOrder(entries).map(([id]) => id)).toEqual(wanted.map((entry) => `entry-${entry}`));
      }),
    );
  });

  test('between two neighbours there is always room, before the first too', () => {
    for (const [before, after] of [
      ['', 'b'],
      ['a', 'b'],
      ['az', 'b'],
      ['n', ''],
      ['zz', ''],
      ['ab', 'abb'],
    ] as const) {
      const key = orderKeyBetween(before, after);
      expect(key > before).toBe(true);
      if (after !== '') expect(key < after).toBe(true);
    }
  });

  test('entries with one key go by id, so that every device shows the same', () => {
    const entries = { b: { order: 'n' }, c: { order: 'a' }, a: { order: 'n' } };
    expect(inOrder(entries).map(([id]) => id)).toEqual(['c', 'a', 'b']);
  });

  test('a new entry comes last, in an empty map too', () => {
    const entries = inWrittenOrder({ one: {}, two: {}, three: {} });
    expect(inOrder(entries).map(([id]) => id)).toEqual(['one', 'two', 'three']);
    const last = orderKeyAtEnd(entries);
    for (const { order } of Object.values(entries)) expect(last > order).toBe(true);
    expect(orderKeyAtEnd({})).toMatch(/^[a-z]+$/);
  });

  test('a thousand entries added one after the other keep keys that the schema takes', () => {
    const entries: Record<string, { order: string }> = {};
    let before = '';
    for (let entry = 0; entry < 1000; entry += 1) {
      const order = orderKeyAtEnd(entry === 0 ? {} : { last: { order: before } });
      expect(order > before).toBe(true);
      before = order;
    }
    entries.last = { order: before };
    expect(before).toMatch(/^[a-z]{1,80}$/);
    expect(orderKeyBetween(before, '') > before).toBe(true);
  });
});
