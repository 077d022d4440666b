import {
  alignmentDays,
  type Alignment,
  type AlignmentDays,
  type AlignmentProblem,
} from '../spot/alignment.ts';
import type { AlignmentQuestion } from '../spot/alignment-question.ts';
import { ok, type Result } from '../units/result.ts';
import { alignmentLight, type AlignmentLight } from './alignment-light.ts';
import type { SetupScene } from './setup-light.ts';
import type { SetupQuestion } from './setup-question.ts';

/** Where sun or moon is wanted in a setup's picture, plain data. */
export type AlignmentInput = Pick<
  AlignmentQuestion,
  'body' | 'fromDate' | 'days' | 'wanted' | 'toleranceDeg'
> & {
  readonly scene: SetupScene;
  /** Null: the light alone. */
  readonly question: SetupQuestion | null;
};

export type LitAlignment = Alignment & { readonly light: AlignmentLight };

export type LitAlignmentDays = Omit<AlignmentDays, 'alignments'> & {
  readonly alignments: readonly LitAlignment[];
};

export type AlignmentAnswer = Result<LitAlignmentDays, AlignmentProblem>;

/** The search is counted as this much of the whole. */
const SEARCH_SHARE = 0.8;
const LIGHTS_A_STEP = 20;

/**
 * The dates on which sun or moon stands where it is wanted, each with the light of its best minute
 * under the scene's sky condition. Yields how much is done, 0 to 1.
 */
export function* litAlignments({
  scene,
  question,
  ...wish
}: AlignmentInput): Generator<number, AlignmentAnswer> {
  const search = alignmentDays({ ...scene, ...wish });
  let found = search.next();
  while (found.done !== true) {
    yield SEARCH_SHARE * found.value;
    found = search.next();
  }
  if (!found.value.ok) return found.value;

  const days = found.value.value;
  const lightAt = alignmentLight(scene, question);
  const alignments: LitAlignment[] = [];
  for (const alignment of days.alignments) {
    alignments.push({ ...alignment, light: lightAt(alignment.best.instantMs) });
    if (alignments.length % LIGHTS_A_STEP === 0)
      yield SEARCH_SHARE + ((1 - SEARCH_SHARE) * alignments.length) / days.alignments.length;
  }
  return ok({ ...days, alignments });
}
