import { fail } from '../units/result.ts';

/** Something a setup names is not in the kit. */
export type KitGap = {
  readonly kind: 'not-in-kit';
  readonly what: 'camera' | 'lens' | 'head' | 'modifier' | 'filter' | 'gel';
  readonly id: string;
};

export const missing = (
  what: KitGap['what'],
  id: string,
): { readonly ok: false; readonly problem: KitGap } => fail({ kind: 'not-in-kit', what, id });
