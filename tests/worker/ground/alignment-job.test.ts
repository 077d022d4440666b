import { describe, expect, test } from 'vitest';

import { alignmentLight } from '../../../src/core/plan/alignment-light.ts';
import { alignmentDays } from '../../../src/core/spot/alignment.ts';
import type { AlignmentAnswer, AlignmentInput } from '../../../src/core/plan/lit-alignments.ts';
import { alignmentJob } from '../../../src/worker/ground/alignment-job.ts';
import { runGroundJob, type GroundRun } from '../../../src/worker/ground/run-ground-job.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';
import { runThrough } from '../../support/run-through.ts';

const { scene, question } = caseOfMinute(demoMinute('quartet', '19:40', 'clear'));

/** Over the pier’s sea to the west-north-west, 300° and 10° up. */
const asked: AlignmentInput = {
  scene,
  question,
  body: 'sun',
  fromDate: '2027-05-14',
  days: 400,
  wanted: { xFraction: 0, yFraction: 0 },
  toleranceDeg: 2,
};

const run = (
  input: AlignmentInput,
  cancelAfter = Infinity,
): { shares: number[]; answer: Promise<GroundRun<AlignmentAnswer>> } => {
  const shares: number[] = [];
  const answer = runGroundJob(alignmentJob(input), {
    onProgress: (share) => shares.push(share),
    isCancelled: () => shares.length >= cancelAfter,
    letMessagesIn: () => Promise.resolve(),
  });
  return { shares, answer };
};

const done = async (input: AlignmentInput): Promise<AlignmentAnswer> => {
  const end = await run(input).answer;
  if (end.kind !== 'done') throw new Error('expected an answer');
  return end.answer;
};

describe('the search in the worker', () => {
  test('finds what the search of the core finds, each with the light of its best minute', async () => {
    const answer = await done(asked);
    const { answer: plain } = runThrough(alignmentDays({ ...scene, ...asked }));
    if (!answer.ok || !plain.ok) throw new Error('expected dates');
    expect(answer.value.alignments.map(({ light: _light, ...rest }) => rest)).toEqual(
      plain.value.alignments,
    );
    const lightAt = alignmentLight(scene, question);
    for (const { best, light } of answer.value.alignments) {
      expect(light).toEqual(lightAt(best.instantMs));
      expect(light.sunInFrame).toBe(true);
    }
    expect(answer.value.alignments.length).toBeGreaterThan(5);
  });

  test('crosses to the page and back unchanged', async () => {
    expect(structuredClone(asked)).toEqual(asked);
    const answer = await done(asked);
    expect(structuredClone(answer)).toEqual(answer);
  });

  test('tells how far it has come, ever farther, and never past the end', async () => {
    const { shares, answer } = run({ ...asked, body: 'moon', toleranceDeg: 20 });
    await answer;
    expect(shares.length).toBeGreaterThan(5);
    expect(shares.every((share, at) => share >= (shares[at - 1] ?? 0) && share <= 1)).toBe(true);
  });

  test('is given up at the first step after a cancellation', async () => {
    const { shares, answer } = run({ ...asked, body: 'moon', toleranceDeg: 20 }, 2);
    expect(await answer).toEqual({ kind: 'cancelled' });
    expect(shares).toHaveLength(2);
  });

  test('without a date it answers the reason', async () => {
    expect(await done({ ...asked, wanted: { xFraction: 0, yFraction: -0.5 } })).toMatchObject({
      ok: false,
      problem: { kind: 'below-skyline' },
    });
  });
});
