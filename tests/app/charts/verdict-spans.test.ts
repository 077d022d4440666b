import { describe, expect, test } from 'vitest';
import { verdictSpans, spanKind, type SpanKind } from '../../../src/app/charts/verdict-spans.ts';
import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { setupColumn, type SetupColumn } from '../../../src/core/plan/setup-column.ts';
import { VERDICTS, type Verdict } from '../../../src/core/plan/verdicts.ts';
import { setupScene } from '../../../src/core/plan/setup-light.ts';
import { setupQuestion } from '../../../src/core/plan/setup-lights.ts';
import { emptyLightColumn } from '../../../src/core/spot/light-column.ts';

const MINUTE_MS = 60_000;
const STEP_MS = 10 * MINUTE_MS;

/** A column written by hand, ten minutes a step from 0. */
const columnOf = (
  steps: readonly {
    verdict: Verdict;
    reference?: number;
    inHand?: number;
    short?: number;
    face?: number;
  }[],
): { column: SetupColumn; faceAmbientEv: Float64Array } => {
  const list = (read: (step: (typeof steps)[number]) => number | undefined): Float64Array =>
    Float64Array.from(steps, (step) => read(step) ?? NaN);
  return {
    column: {
      ...emptyLightColumn(Float64Array.from(steps, (_, at) => at * STEP_MS)),
      referenceEv: list(({ reference }) => reference),
      reachEv: list(() => NaN),
      inHandStops: list(({ inHand }) => inHand),
      shortByStops: list(({ short }) => short ?? 0),
      verdict: Uint8Array.from(steps, ({ verdict }) => VERDICTS.indexOf(verdict)),
      limitingRole: new Uint8Array(steps.length),
    },
    faceAmbientEv: list(({ face }) => face),
  };
};

describe('where a setup stops working, by the arithmetic of the margin', () => {
  test('a sky 0.3 under the reach and ten minutes later 0.1 above it crosses after 7.5 minutes', () => {
    const spans = verdictSpans(
      columnOf([
        { verdict: 'works', inHand: 0.3 },
        { verdict: 'sky-above-reach', inHand: -0.1, short: 0.1 },
        { verdict: 'works', inHand: 0.1 },
      ]),
    );
    expect(spans).toHaveLength(1);
    expect(spans[0]?.kind).toBe('out-of-reach');
    expect(spans[0]?.fromMs).toBeCloseTo(7.5 * MINUTE_MS, 3);
    expect(spans[0]?.toMs).toBeCloseTo(15 * MINUTE_MS, 3);
  });

  test('an unlit face 0.4 too bright that was a stop darker against the sky before crosses at 6 minutes', () => {
    const [span] = verdictSpans(
      columnOf([
        { verdict: 'works', reference: 14, face: 11 },
        { verdict: 'ambient-lights-the-face', reference: 14, face: 12, short: 0.4 },
        { verdict: 'ambient-lights-the-face', reference: 14, face: 12, short: 0.4 },
      ]),
    );
    expect(span?.fromMs).toBeCloseTo(6 * MINUTE_MS, 3);
    expect(span?.toMs).toBe(30 * MINUTE_MS);
  });

  test('a head 0.5 too strong at dusk came to its lowest power when the sky was half a stop brighter', () => {
    const [span] = verdictSpans(
      columnOf([
        { verdict: 'works', reference: 8 },
        { verdict: 'head-too-strong', reference: 6, short: 0.5 },
      ]),
    );
    expect(span?.kind).toBe('too-dark');
    expect(span?.fromMs).toBeCloseTo(7.5 * MINUTE_MS, 3);
  });

  test('sky above the reach and a face lit by ambient, one after the other, are one part of the day', () => {
    const spans = verdictSpans(
      columnOf([
        { verdict: 'sky-above-reach', inHand: -1, short: 1 },
        { verdict: 'ambient-lights-the-face', inHand: 0.2, short: 0.2, reference: 14, face: 12 },
        { verdict: 'sky-above-reach', inHand: -1, short: 1 },
      ]),
    );
    expect(spans).toEqual([{ fromMs: 0, toMs: 3 * STEP_MS, kind: 'out-of-reach' }]);
  });

  test('a day that works throughout has no such part, and neither has an empty column', () => {
    expect(verdictSpans(columnOf([{ verdict: 'works' }, { verdict: 'works' }]))).toEqual([]);
    expect(verdictSpans(columnOf([]))).toEqual([]);
  });
});

const nearest = (ms: number, of: readonly number[]): number =>
  Math.min(...of.map((other) => Math.abs(other - ms)));

describe('edges from ten-minute steps lie where the verdict asked for every minute changes', () => {
  const shoot = demoShoot();
  const kit = demoKit();
  const dayOf = (setupId: string, stepMin: number): SetupColumn => {
    const setup = shoot.setups[setupId];
    const spot = setup && shoot.spots[setup.spotId];
    if (setup === undefined || spot === undefined) throw new Error(`no setup ${setupId}`);
    const question = setupQuestion(setup, spot, kit);
    if (!question.ok) throw new Error('the demo kit is short of something');
    return setupColumn({
      scene: setupScene(shoot, setup, spot),
      question: question.value,
      date: shoot.date,
      stepMin,
    });
  };

  // Two minutes: what the margin bends away from a straight line within ten, and half a minute of steps.
  const toleranceMs = 2.5 * MINUTE_MS;

  test.each(Object.keys(shoot.setups))('%s', (setupId) => {
    const column = dayOf(setupId, 10);
    const spans = verdictSpans({ column, faceAmbientEv: column.ambientOutEv });
    const minutes = dayOf(setupId, 1);
    const kindAt = (at: number): SpanKind | null =>
      spanKind(VERDICTS[minutes.verdict[at] ?? -1] ?? 'not-asked');
    const changes = [...minutes.instantMs].filter(
      (_, at) => at > 0 && kindAt(at) !== kindAt(at - 1),
    );
    const edges = spans.flatMap(({ fromMs, toMs }) => [fromMs, toMs]);
    expect(changes.length).toBeGreaterThan(1);
    for (const change of changes)
      expect(nearest(change - MINUTE_MS / 2, edges)).toBeLessThan(toleranceMs);
  });
});
