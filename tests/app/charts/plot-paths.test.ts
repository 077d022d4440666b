import { expect, test } from 'vitest';
import { evTicks, shareOfEv, type PlotFrame } from '../../../src/app/charts/plot-frame.ts';
import { bandPath, linePath } from '../../../src/app/charts/plot-paths.ts';
import { spreadLabels } from '../../../src/app/charts/spread-labels.ts';

const frame: PlotFrame = { startMs: 0, endMs: 100, fromEv: 2, toEv: 18 };

test('EV 2 stands at the left edge, EV 10 in the middle, and fours are marked between', () => {
  expect(shareOfEv(2, frame)).toBe(0);
  expect(shareOfEv(10, frame)).toBe(0.5);
  expect(evTicks(frame)).toEqual([4, 8, 12, 16]);
  expect(evTicks({ ...frame, fromEv: -6 })).toEqual([-4, 0, 4, 8, 12, 16]);
});

test('time runs down the path and brightness across it', () => {
  const ev = [2, 10, 18];
  expect(linePath({ instantMs: [0, 50, 100], ev: (step) => ev[step] ?? NaN }, frame)).toBe(
    'M0.0 0.0L500.0 500.0L1000.0 1000.0',
  );
});

test('a line breaks where there is no figure, and a lone step draws nothing', () => {
  const ev = [2, 10, NaN, 10, -Infinity];
  expect(linePath({ instantMs: [0, 20, 40, 60, 80], ev: (step) => ev[step] ?? NaN }, frame)).toBe(
    'M0.0 0.0L500.0 200.0',
  );
});

test('a band goes down along its dark edge and back along its bright one', () => {
  expect(bandPath({ instantMs: [0, 100], lowEv: () => 6, highEv: () => 10 }, frame)).toBe(
    'M250.0 0.0L250.0 1000.0L500.0 1000.0L500.0 0.0Z',
  );
});

test('only one step beyond each edge of the plot is written', () => {
  const instantMs = [-200, -100, 50, 200, 300];
  expect(linePath({ instantMs, ev: () => 2 }, frame).match(/[ML]/g)).toHaveLength(3);
});

// Sunrise 05:30, sun at 6° 06:15 and so on crowd where the plot is low.
test('labels that crowd keep their distance and their order, and stay on the axis', () => {
  const shown = spreadLabels(
    [{ share: 0.99 }, { share: 0.5 }, { share: 0.98 }, { share: 0.51 }],
    0.05,
  );
  const shares = shown.map(({ shownShare }) => shownShare);
  expect(shown.map(({ share }) => share)).toEqual([0.5, 0.51, 0.98, 0.99]);
  shares.slice(1).forEach((share, at) => expect(share - (shares[at] ?? 0)).toBeGreaterThan(0.0499));
  expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  expect(
    spreadLabels([{ share: 0.2 }, { share: 0.6 }], 0.05).map(({ shownShare }) => shownShare),
  ).toEqual([0.2, 0.6]);
});
