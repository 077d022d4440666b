import type { SkyCondition } from '../daylight/sky-condition.ts';
import { fail, ok, type Result } from '../units/result.ts';
import { readingPrediction } from './reading-prediction.ts';
import { setupCase, type SetupCase, type SetupCaseInput, type SetupGap } from './setup-case.ts';
import { readLevel, readSpreadStops, type ReadOf, type SiteReading } from './site-reading.ts';

/** What a reading moves: a cloud does not move the flash, a flat battery does not move the sky. */
export type ShiftOf =
  | { readonly kind: 'sky' | 'ambient' }
  | { readonly kind: 'head'; readonly headId: string; readonly modifierId: string };

/** How far a reading lay off its prediction for the same minute and bearing. */
export type ReadingShift = {
  readonly readingId: string;
  readonly of: ShiftOf;
  readonly atMs: number;
  /** Brighter than predicted is positive. */
  readonly stops: number;
  /** ± of the reading itself. */
  readonly spreadStops: number;
  /** EV at ISO 100; for a flash log2 N² at ISO 100. */
  readonly predictedStops: number;
  readonly readStops: number;
  /** That the prediction was made for. */
  readonly condition: SkyCondition;
  readonly bearingDeg: number | null;
  /** What speaks against it although the user stands by it; null: nothing. */
  readonly doubt: string | null;
};

export type ReadingRefusal =
  | { readonly kind: 'unreadable'; readonly sentence: string }
  /** Too far off to be taken unasked. */
  | { readonly kind: 'far-off'; readonly offStops: number; readonly sentence: string };

/** Twice and more what the widest spread of the model allows, common practice. [lightingPractice] */
const FAR_OFF_STOPS = 4;
/** Twice what rated figures were found to differ by (B16, B17). [practitionerPages] */
const HEAD_FAR_OFF_STOPS = 2.2;

/**
 * A reading as a shift against the prediction of its setup at its minute; `base` is that setup at
 * that minute, no shift applied. One that is far off is named, and taken only when confirmed.
 */
export function readingShift(
  base: SetupCase,
  reading: SiteReading,
): Result<ReadingShift, ReadingRefusal> {
  const { of, value } = reading;
  const predicted = readingPrediction(base, of, reading.atMs);
  if (!predicted.ok) return fail({ kind: 'unreadable', ...predicted.problem });
  const { levelStops: predictedStops, bearingDeg } = predicted.value;
  let offStops: number;
  if (value.kind === 'frame-off') {
    offStops = value.appliedStops + value.overStops;
    if (!Number.isFinite(offStops))
      return fail({
        kind: 'unreadable',
        sentence: `Stops too bright: expected a number, found ${offStops}.`,
      });
  } else {
    const read = readLevel(of, value);
    if (!read.ok) return fail({ kind: 'unreadable', ...read.problem });
    offStops = read.value.levelStops - predictedStops;
  }
  if (!Number.isFinite(offStops))
    return fail({ kind: 'unreadable', sentence: 'There is no light to compare the reading with.' });
  const doubt = farOff(of, offStops);
  if (doubt !== null && !reading.confirmed)
    return fail({ kind: 'far-off', offStops, sentence: doubt });
  const shifted = shiftOf(base, of);
  if (shifted === null)
    return fail({ kind: 'unreadable', sentence: 'The light that was read is not in this setup.' });
  return ok({
    readingId: reading.id,
    of: shifted,
    atMs: reading.atMs,
    stops: offStops,
    spreadStops: readSpreadStops(value),
    predictedStops,
    readStops: predictedStops + offStops,
    condition: base.scene.condition,
    bearingDeg,
    doubt,
  });
}

/** The same, the prediction worked out for the reading's own minute. */
export function readingShiftAt(
  asked: Omit<SetupCaseInput, 'instantMs'>,
  reading: SiteReading,
): Result<ReadingShift, ReadingRefusal | SetupGap> {
  const made = setupCase({ ...asked, instantMs: reading.atMs });
  return made.ok ? readingShift(made.value, reading) : made;
}

function farOff(of: ReadOf, offStops: number): string | null {
  const size = Math.abs(offStops);
  const way = offStops > 0 ? 'brighter' : 'darker';
  const off = `The reading is ${size.toFixed(1)} stops ${way} than predicted`;
  if (of.kind === 'flash')
    return size > HEAD_FAR_OFF_STOPS
      ? `${off}; a head is off by about one. Look again at ISO, power and distance, and at which light fired.`
      : null;
  return size > FAR_OFF_STOPS
    ? `${off}; no sky strays that far. Look again at ISO, shutter and filters, at where the meter looked, and at the sky condition.`
    : null;
}

function shiftOf({ sources }: SetupCase, of: ReadOf): ShiftOf | null {
  switch (of.kind) {
    case 'sky':
      return { kind: 'sky' };
    case 'incident':
      return { kind: 'ambient' };
    case 'flash': {
      const source = sources.find(({ lightId }) => lightId === of.lightId);
      return source === undefined
        ? null
        : { kind: 'head', headId: source.light.headId, modifierId: source.light.modifierId };
    }
  }
}
