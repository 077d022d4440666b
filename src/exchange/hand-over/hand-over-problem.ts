import { fail, type Result } from '../../core/units/result.ts';

/** Why a shoot cannot be handed over or taken over, with a way out where there is one. */
export type HandOverProblem =
  | {
      /** Not an end: what is there is good, the codes of these numbers are still to come. */
      readonly kind: 'incomplete';
      readonly sentence: string;
      readonly missing: readonly number[];
    }
  | {
      readonly kind:
        | 'too-long'
        | 'no-hash'
        | 'no-hand-over'
        | 'newer'
        | 'damaged'
        | 'cut-short'
        | 'too-large'
        | 'of-several';
      readonly sentence: string;
    };

export const handOverProblem = (
  kind: Exclude<HandOverProblem['kind'], 'incomplete'>,
  sentence: string,
): Result<never, HandOverProblem> => fail({ kind, sentence });
