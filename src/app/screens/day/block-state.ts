import type { Kit } from '../../../core/plan/kit.ts';
import { setupView } from '../../../core/plan/setup-view.ts';
import type { Shoot } from '../../../core/plan/shoot.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import type { VerdictSpan } from '../../charts/verdict-spans.ts';
import { inHandText } from '../../ui/figure-text.ts';
import { blockEndMs, type BlockTime } from './block-time.ts';
import { shortRecipeText } from '../../ui/short-recipe-text.ts';
import { gapText, problemText } from '../../ui/verdict-text.ts';

/** What a block says of its setup at the minute it starts. */
export type BlockState = {
  readonly works: boolean;
  /** The settings in short; empty where it does not work. */
  readonly recipe: string;
  /** '0.9 in hand', 'short by 0.8, fill runs out first', or what breaks. */
  readonly verdict: string;
};

/** Solved for the block's first minute. */
export function blockState(shoot: Shoot, kit: Kit, setupId: string, startMs: number): BlockState {
  const view = setupView({ shoot, kit, setupId, instantMs: startMs });
  if (!view.ok) return { works: false, recipe: '', verdict: gapText(view.problem) };
  const { answer } = view.value;
  if (!answer.ok) return { works: false, recipe: '', verdict: problemText(answer.problem) };
  return {
    works: true,
    recipe: shortRecipeText(view.value, answer.value),
    verdict: Number.isFinite(answer.value.recipe.inHandStops)
      ? inHandText(answer.value.recipe.inHandStops)
      : 'no lights yet',
  };
}

/** 'until 20:25' or 'from 20:10' where a block works for a part of its time only; else empty. */
export function partText(
  spans: readonly VerdictSpan[],
  block: BlockTime,
  works: boolean,
  zone: string,
): string {
  const endMs = blockEndMs(block);
  if (works) {
    const breaks = spans.find(({ fromMs }) => fromMs > block.startMs && fromMs < endMs);
    return breaks === undefined ? '' : `until ${clockTime(breaks.fromMs, zone)}`;
  }
  const broken = spans.find(({ fromMs, toMs }) => fromMs <= block.startMs && toMs > block.startMs);
  return broken !== undefined && broken.toMs < endMs
    ? `from ${clockTime(broken.toMs + 59_999, zone)}`
    : '';
}
