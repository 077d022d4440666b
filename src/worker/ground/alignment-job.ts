import {
  litAlignments,
  type AlignmentAnswer,
  type AlignmentInput,
} from '../../core/plan/lit-alignments.ts';

/** On which dates sun or moon stands where it is wanted in the picture. */
export function* alignmentJob(input: AlignmentInput): Generator<number, AlignmentAnswer> {
  return yield* litAlignments(input);
}
