import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { ndChoices, settings } from '../../../src/core/exposure/nd-choices.ts';
import { stackRoomMm, threadFit } from '../../../src/core/exposure/stack-room.ts';

const FULL_FRAME_MM = Math.hypot(36, 24);
const room = (focalLengthMm: number, shortestMm: number): number =>
  stackRoomMm({ focalLengthMm, shortestMm, sensorDiagonalMm: FULL_FRAME_MM });

describe('room for rings', () => {
  // Common practice, from memory: one usual ring is all that a wide zoom takes at its short end.
  test('a zoom takes one ring at its shortest and more the longer it is set', () => {
    expect(room(24, 24)).toBeCloseTo(5, 9);
    expect(room(48, 24)).toBeCloseTo(10, 9);
    expect(room(70, 24)).toBeCloseTo(14.6, 1);
  });

  test('a portrait lens takes three rings', () => expect(Math.floor(room(85, 85) / 5)).toBe(3));

  test('depth times the tangent of half the diagonal field is the same at every length', () =>
    fc.assert(
      fc.property(fc.double({ min: 16, max: 200, noNaN: true }), (focalLengthMm) => {
        const tangent = FULL_FRAME_MM / 2 / focalLengthMm;
        expect(room(focalLengthMm, 16) * tangent).toBeCloseTo(5 * (FULL_FRAME_MM / 2 / 16), 6);
      }),
    ));

  test('a wider thread goes on by a step ring, a narrower one cuts the corners, an unknown one is said', () => {
    expect(threadFit(82, 82)).toBe('fits');
    expect(threadFit(82, 67)).toBe('step-ring');
    expect(threadFit(67, 82)).toBe('cuts-corners');
    expect(threadFit(null, 82)).toBe('not-known');
    expect(threadFit(82, null)).toBe('not-known');
  });
});

const nd = (fromStops: number, toStops = fromStops, ringMm = 5) => ({ fromStops, toStops, ringMm });
const stopsOf = (choices: ReturnType<typeof ndChoices>): readonly number[] =>
  choices.map(({ stops }) => stops).toSorted((one, other) => one - other);

describe('ND that may go before a lens', () => {
  test('four and no more are screwed together: 1, 2, 3, 4 and 6 stops make up to 15', () => {
    const owned = [nd(1), nd(2), nd(3), nd(4), nd(6)];
    const choices = ndChoices(owned, { mostFilters: 4, mostMm: 100 });
    expect(Math.max(...stopsOf(choices))).toBe(15);
    expect(stopsOf(ndChoices(owned, { mostFilters: 1, mostMm: 100 }))).toEqual([0, 1, 2, 3, 4, 6]);
  });

  test('a stack that would cut the corners is not there', () => {
    const owned = [nd(2), nd(3), nd(6, 6, 3)];
    expect(stopsOf(ndChoices(owned, { mostFilters: 4, mostMm: 8 }))).toEqual([0, 2, 3, 6, 8, 9]);
    expect(stopsOf(ndChoices(owned, { mostFilters: 4, mostMm: 5 }))).toEqual([0, 2, 3, 6]);
  });

  test('each density is made by the fewest filters', () => {
    const choices = ndChoices([nd(1), nd(2), nd(3)], { mostFilters: 4, mostMm: 100 });
    expect(choices.find(({ stops }) => stops === 3)?.filters).toEqual([2]);
  });

  test('a variable one is set in thirds from its weakest to its strongest', () => {
    expect(settings({ fromStops: 2, toStops: 3 }).map((stops) => stops.toFixed(2))).toEqual([
      '2.00',
      '2.33',
      '2.67',
      '3.00',
    ]);
    expect(settings({ fromStops: 2, toStops: 2.5 })).toEqual([2, 2 + 1 / 3, 2.5]);
    expect(settings({ fromStops: 2, toStops: 2 })).toEqual([2]);
    expect(stopsOf(ndChoices([nd(2, 5)], { mostFilters: 4, mostMm: 5 })).length).toBe(11);
  });

  test('two variable ones are never put on each other: they cross', () =>
    expect(
      Math.max(...stopsOf(ndChoices([nd(2, 5), nd(2, 5)], { mostFilters: 4, mostMm: 50 }))),
    ).toBe(5));

  test('what is named adds up to what it says, in any kit', () =>
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { maxLength: 6 }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (owned, mostMm) => {
          for (const { stops, filters } of ndChoices(
            owned.map((one) => nd(one)),
            { mostFilters: 4, mostMm },
          )) {
            expect(filters.length * 5).toBeLessThanOrEqual(Math.max(0, mostMm) + 1e-5);
            const sum = filters.reduce((total, place) => total + (owned[place] ?? NaN), 0);
            expect(stops).toBeCloseTo(sum, 9);
          }
        },
      ),
    ));
});
