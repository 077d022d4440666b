import type { OrderQuestion } from '../../src/core/plan/order-day.ts';
import { bestOrderInSteps, type DayOrder } from '../../src/core/plan/order.ts';
import { orderByBruteForce } from '../support/order-by-brute-force.ts';
import { crowdedDay, plantedDay } from '../support/order-days.ts';
import { earliestWindowFirst, randomInsertion } from '../support/order-rivals.ts';
import { seededRandom } from '../support/seeded-framings.ts';
import type { Bench, Figure } from './bench.ts';

const most = (figure: string, value: number, target: number, unit: string): Figure => ({
  figure,
  value,
  unit,
  target,
  ok: value <= target,
});

const least = (figure: string, value: number, target: number): Figure => ({
  figure,
  value,
  unit: '%',
  target,
  ok: value >= target,
});

type Run = { readonly found: DayOrder; readonly wholeMs: number; readonly stepMs: number };

function run(question: OrderQuestion): Run {
  const work = bestOrderInSteps(question);
  const startMs = performance.now();
  let lastMs = startMs;
  let stepMs = 0;
  for (;;) {
    const step = work.next();
    const nowMs = performance.now();
    stepMs = Math.max(stepMs, nowMs - lastMs);
    lastMs = nowMs;
    if (step.done === true) return { found: step.value, wholeMs: nowMs - startMs, stepMs };
  }
}

const medianOf = (values: readonly number[]): number =>
  values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN;

/** The whole, and the longest of the steps, both as the middle of some days. */
const timed = (named: string, days: readonly OrderQuestion[], targetMs: number): Figure[] => {
  const runs = days.map(run);
  return [
    most(
      `${named}, middle of ${days.length}`,
      medianOf(runs.map((one) => one.wholeMs)),
      targetMs,
      'ms',
    ),
    most(`${named}, slowest`, Math.max(...runs.map((one) => one.wholeMs)), targetMs, 'ms'),
    most('its longest step, middle', medianOf(runs.map((one) => one.stepMs)), 30, 'ms'),
  ];
};

const twelve = (seed: number, hours: number): OrderQuestion =>
  crowdedDay({ setups: 12, spots: 6, hours, longestShootMin: 45 }, seededRandom(seed));

const thirty = (seed: number): OrderQuestion =>
  crowdedDay({ setups: 30, spots: 8, hours: 15, longestShootMin: 45 }, seededRandom(seed));

const SEEDS = [1, 2, 3, 4, 5];
const RIVAL_MS = 2000;

/** How much better the order is than the best of two seconds of random insertion, in per cent of it. */
function overRandomPercent(seed: number): number {
  const question = thirty(seed);
  const draw = seededRandom(1000 + seed);
  let rival = 0;
  for (const untilMs = performance.now() + RIVAL_MS; performance.now() < untilMs;)
    rival = Math.max(rival, randomInsertion(question, draw));
  return 100 * (run(question).found.worth / rival - 1);
}

export const benches: readonly Bench[] = [
  {
    name: 'Order of a day, exact',
    run: async () => [
      ...timed(
        '12 setups, 15 h',
        SEEDS.map((seed) => twelve(seed, 15)),
        1000,
      ),
      ...timed(
        '12 setups, 24 h',
        SEEDS.map((seed) => twelve(seed, 24)),
        1000,
      ),
    ],
  },
  {
    name: 'Order of a day, exact, against every order tried',
    run: async () => {
      const cases = Array.from({ length: 200 }, (_, seed) =>
        crowdedDay({ setups: 7, spots: 3, hours: 1.5, longestShootMin: 20 }, seededRandom(seed)),
      );
      const off = cases.map((question) =>
        Math.abs(run(question).found.worth - orderByBruteForce(question).worth),
      );
      return [most('largest difference in 200 days of 7', Math.max(...off), 1e-9, 'worth')];
    },
  },
  {
    name: 'Order of a day of 30 setups, not proven',
    run: async () => {
      const planted = Array.from({ length: 20 }, (_, seed) =>
        plantedDay(
          { setups: 30, spots: 8, halfWidth: seed % 2 === 0 ? 12 : 60 },
          seededRandom(seed + 1),
        ),
      );
      const shares = planted.map(({ question, worth }) => run(question).found.worth / worth);
      const overEarliest = SEEDS.map(
        (seed) => 100 * (run(thirty(seed)).found.worth / earliestWindowFirst(thirty(seed)) - 1),
      );
      return [
        ...timed('30 setups, 15 h', SEEDS.map(thirty), 3000),
        ...timed(
          '60 setups, 15 h',
          [crowdedDay({ setups: 60, spots: 12, hours: 15, longestShootMin: 30 }, seededRandom(1))],
          6000,
        ),
        least('of the planted order, worst of 20 days', 100 * Math.min(...shares), 95),
        least('above earliest window first, worst of 5 days', Math.min(...overEarliest), 0),
        least(
          'above 2 s of random insertion, worst of 5 days',
          Math.min(...SEEDS.map(overRandomPercent)),
          0,
        ),
      ];
    },
  },
];
