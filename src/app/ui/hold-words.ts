import type { HoldReference } from '../../core/plan/setup-schema.ts';
import { tenths } from './figure-text.ts';

/** What a hold is under: to choose from, in a sentence, and beside the other two. */
export const HOLD_WORDS: Readonly<
  Record<HoldReference, { readonly choice: string; readonly full: string; readonly brief: string }>
> = {
  patch: { choice: 'the patch of sky', full: 'the patch', brief: 'the patch' },
  frame: {
    choice: 'the whole sky in frame',
    full: 'the whole sky in frame',
    brief: 'the frame',
  },
  incident: {
    choice: 'the incident reading',
    full: 'incident at the subject',
    brief: 'incident',
  },
};

/** 'to hold it 2.0 under the patch' */
export function wishText(holdStops: number, under: HoldReference): string {
  const way = holdStops < 0 ? 'over' : 'under';
  return `to hold it ${tenths(Math.abs(holdStops))} ${way} ${HOLD_WORDS[under].full}`;
}
