import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  nearestMinutes,
  nearestOf,
  unbrokenRuns,
  type Nearness,
} from '../../../src/core/spot/nearest-minutes.ts';
import { moonDirection } from '../../../src/core/sun-moon/moon-position.ts';
import { sunPosition } from '../../../src/core/sun-moon/sun-position.ts';
import { angleBetweenDeg } from '../../../src/core/units/direction.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

const at = (minute: number): Nearness => ({ instantMs: minute * MINUTE_MS, missDeg: 1 });

/** What a look at every minute leaves: those within the tolerance, and each new nearest. */
const everyMinute = (
  span: { startMs: number; endMs: number },
  look: (instantMs: number) => Nearness,
  toleranceDeg: number,
): readonly Nearness[] => {
  const kept: Nearness[] = [];
  let nearestDeg = Infinity;
  for (let ms = span.startMs; ms < span.endMs; ms += MINUTE_MS) {
    const minute = look(ms);
    if (minute.missDeg <= toleranceDeg || minute.missDeg <= nearestDeg) kept.push(minute);
    nearestDeg = Math.min(nearestDeg, minute.missDeg);
  }
  return kept;
};

const degrees = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

test('jumps leave out nothing that a look at every minute finds, anywhere on the globe', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(sunPosition, moonDirection),
      fc.record({ latitudeDeg: degrees(-90, 90), longitudeDeg: degrees(-180, 180) }),
      fc.record({ azimuthDeg: degrees(0, 360), altitudeDeg: degrees(-4, 90) }),
      degrees(0.1, 10),
      fc.integer({ min: 0, max: 30_000 }),
      (positionOf, place, wanted, toleranceDeg, day) => {
        const look = (instantMs: number): Nearness => {
          const { azimuthDeg, apparentAltitudeDeg } = positionOf(instantMs, place);
          const direction = { azimuthDeg, altitudeDeg: apparentAltitudeDeg };
          return { instantMs, missDeg: angleBetweenDeg(direction, wanted) };
        };
        const span = { startMs: day * DAY_MS, endMs: (day + 3) * DAY_MS };
        const all = everyMinute(span, look, toleranceDeg);
        const jumped = nearestMinutes(span, look, { toleranceDeg, nearestDeg: Infinity });
        expect(jumped.filter(({ missDeg }) => missDeg <= toleranceDeg)).toEqual(
          all.filter(({ missDeg }) => missDeg <= toleranceDeg),
        );
        expect(nearestOf(jumped)).toEqual(nearestOf(all));
      },
    ),
    { numRuns: 150 },
  );
});

test('a nearest of before is only beaten by a nearer one', () => {
  const look = (instantMs: number): Nearness => ({
    instantMs,
    missDeg: 3 + Math.abs(instantMs / MINUTE_MS - 100) / 5,
  });
  const span = { startMs: 0, endMs: 200 * MINUTE_MS };
  const after = (nearestDeg: number): Nearness | null =>
    nearestOf(nearestMinutes(span, look, { toleranceDeg: 0.5, nearestDeg }));
  expect(after(5)).toEqual({ instantMs: 100 * MINUTE_MS, missDeg: 3 });
  expect(after(2.9)).toBeNull();
});

test('a body that passes once a day is looked at under fifty times, not 1440', () => {
  let looks = 0;
  const look = (instantMs: number): Nearness => {
    looks += 1;
    const offDeg = 180 - Math.abs(180 - 0.25 * ((instantMs / MINUTE_MS) % 1440));
    return { instantMs, missDeg: Math.hypot(5, offDeg) };
  };
  nearestMinutes({ startMs: 0, endMs: DAY_MS }, look, { toleranceDeg: 0.5, nearestDeg: 4.9 });
  expect(looks).toBeLessThan(50);
});

test('a gap of a minute parts two runs', () => {
  expect(unbrokenRuns([at(1), at(2), at(4), at(5), at(6), at(9)])).toEqual([
    [at(1), at(2)],
    [at(4), at(5), at(6)],
    [at(9)],
  ]);
  expect(unbrokenRuns([])).toEqual([]);
  expect(nearestOf([])).toBeNull();
});
