import type { AlignmentInput } from '../../src/core/plan/lit-alignments.ts';
import { alignmentJob } from '../../src/worker/ground/alignment-job.ts';
import { caseOfMinute, demoMinute } from '../support/demo-minute.ts';
import { seededRandom } from '../support/seeded-framings.ts';
import type { Bench, Figure } from './bench.ts';

const RUNS = 9;

/** The pier's quartet, 5° up in the west-north-west, over a ragged skyline of 360 points. */
function question(body: AlignmentInput['body'], toleranceDeg: number): AlignmentInput {
  const made = caseOfMinute(demoMinute('quartet', '19:40', 'clear'));
  const random = seededRandom(7);
  const skyline = Array.from({ length: 360 }, (_, azimuthDeg) => ({
    azimuthDeg,
    altitudeDeg: 3 * random(),
  }));
  const framing = { ...made.scene.framing, bearingDeg: 285, tiltDeg: 5 };
  return {
    scene: { ...made.scene, framing, skyline },
    question: made.question,
    body,
    fromDate: '2027-05-14',
    days: 400,
    wanted: { xFraction: 0, yFraction: 0 },
    toleranceDeg,
  };
}

function searchMs(input: AlignmentInput): number {
  const startMs = performance.now();
  const work = alignmentJob(input);
  let step = work.next();
  while (step.done !== true) step = work.next();
  if (!step.value.ok) throw new Error(`no date: ${step.value.problem.kind}`);
  return performance.now() - startMs;
}

function row(figure: string, input: AlignmentInput, target: number): Figure {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run += 1) times.push(searchMs(input));
  const value = times.toSorted((one, other) => one - other)[Math.floor(RUNS / 2)] ?? NaN;
  return { figure, value, unit: 'ms', target, ok: value <= target };
}

export const benches: readonly Bench[] = [
  {
    name: 'Sun and moon in the picture, 400 days at one minute, with the light of each date',
    run: async () => [
      row('the sun within 0.5°', question('sun', 0.5), 1000),
      row('the sun within 10°', question('sun', 10), 1000),
      row('the moon within 0.5°', question('moon', 0.5), 3000),
      row('the moon within 10°', question('moon', 10), 3000),
    ],
  },
];
