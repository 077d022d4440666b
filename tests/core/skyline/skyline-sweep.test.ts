import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  highestApart,
  runsOf,
  smoothed,
  sweptRuns,
  type SweepSample,
} from '../../../src/core/skyline/skyline-sweep.ts';
import type { Skyline } from '../../../src/core/skyline/skyline.ts';

const EVERY_MS = 1000 / 60;

/** A hand that sweeps 10° a second along a level edge, with a tremor of 10 Hz. */
const sweep = (
  fromDeg: number,
  toDeg: number,
  edgeDeg: (azimuthDeg: number) => number,
): SweepSample[] =>
  Array.from({ length: Math.round(((toDeg - fromDeg) / 10) * 60) + 1 }, (_, index) => {
    const atMs = index * EVERY_MS;
    const azimuthDeg = fromDeg + atMs / 100;
    const tremorDeg = 0.4 * Math.sin(2 * Math.PI * 10 * (atMs / 1000));
    return {
      atMs,
      azimuthDeg: (azimuthDeg + 360) % 360,
      altitudeDeg: edgeDeg(azimuthDeg) + tremorDeg,
    };
  });

const apartDeg = (one: number, other: number): number => {
  const turn = Math.abs(one - other) % 360;
  return Math.min(turn, 360 - turn);
};

describe('a sweep of the phone', () => {
  test('a tremor of 0.4° on a level edge at 5° leaves points within 0.1° of it, 0.3° at its ends', () => {
    const runs = sweptRuns(sweep(200, 260, () => 5));
    expect(runs).toHaveLength(1);
    expect(runs[0]?.length).toBeGreaterThan(30);
    // At an end only half the period is there to be averaged.
    for (const { azimuthDeg, altitudeDeg } of runs[0] ?? [])
      expect(Math.abs(altitudeDeg - 5)).toBeLessThan(
        azimuthDeg > 201 && azimuthDeg < 259 ? 0.1 : 0.3,
      );
  });

  test('through north it stays one run, its azimuths rising past 360', () => {
    const [run = [], ...others] = sweptRuns(sweep(330, 390, (azimuthDeg) => azimuthDeg / 60));
    expect(others).toEqual([]);
    expect(run[0]?.azimuthDeg).toBeCloseTo(330, -0.5);
    expect(run.at(-1)?.azimuthDeg).toBeCloseTo(390, -0.5);
    for (const { azimuthDeg, altitudeDeg } of run)
      expect(Math.abs(altitudeDeg - azimuthDeg / 60)).toBeLessThan(0.2);
  });

  test('two arcs with 60° between them are two runs', () => {
    const first = sweep(20, 60, () => 3);
    const lastMs = first.at(-1)?.atMs ?? 0;
    const second = sweep(120, 160, () => 7).map((sample) => ({
      ...sample,
      atMs: sample.atMs + lastMs + 3000,
    }));
    const runs = sweptRuns([...first, ...second]);
    expect(runs.map((run) => Math.round(run[0]?.altitudeDeg ?? NaN))).toEqual([3, 7]);
  });

  test('smoothing averages across north, not through south', () => {
    const samples = [359, 1, 359, 1].map((azimuthDeg, index) => ({
      atMs: index,
      azimuthDeg,
      altitudeDeg: 2,
    }));
    for (const { azimuthDeg } of smoothed(samples))
      expect(apartDeg(azimuthDeg, 0)).toBeLessThan(1e-9);
  });

  test('nothing recorded is no run', () => expect(sweptRuns([])).toEqual([]));
});

const directions = fc.array(
  fc.record({
    azimuthDeg: fc.double({ min: 0, max: 359.99, noNaN: true }),
    altitudeDeg: fc.double({ min: -5, max: 60, noNaN: true }),
  }),
  { maxLength: 200 },
);

describe('thinning', () => {
  test('kept points are at least 1° apart, and what is left out has one as high within 1°', () => {
    fc.assert(
      fc.property(directions, (points) => {
        const kept = highestApart(points, 1);
        kept.forEach((one, index) => {
          for (const other of kept.slice(index + 1))
            expect(apartDeg(one.azimuthDeg, other.azimuthDeg)).toBeGreaterThanOrEqual(1 - 1e-9);
        });
        for (const point of points)
          expect(
            kept.some(
              (one) =>
                apartDeg(one.azimuthDeg, point.azimuthDeg) < 1 &&
                one.altitudeDeg >= point.altitudeDeg,
            ),
          ).toBe(true);
      }),
    );
  });

  test('runs hold every point once, rise, and have no gap wider than asked', () => {
    fc.assert(
      fc.property(directions, (points) => {
        const sorted = points.toSorted((one, other) => one.azimuthDeg - other.azimuthDeg);
        const runs: readonly Skyline[] = runsOf(sorted, 15);
        const back = runs.flat().map(({ azimuthDeg }) => azimuthDeg % 360);
        // Adding 360 and taking it off again costs the last digits.
        back
          .toSorted((one, other) => one - other)
          .forEach((azimuthDeg, at) =>
            expect(azimuthDeg).toBeCloseTo(sorted[at]?.azimuthDeg ?? NaN, 9),
          );
        for (const run of runs)
          run.slice(1).forEach((point, at) => {
            const stepDeg = point.azimuthDeg - (run[at]?.azimuthDeg ?? NaN);
            expect(stepDeg).toBeGreaterThanOrEqual(0);
            expect(stepDeg).toBeLessThanOrEqual(15 + 1e-9);
          });
      }),
    );
  });
});
