import type { HoldUnder, RecipeInput } from './recipe.ts';

export type HoldReferences = {
  readonly patchEv: number | null;
  readonly meanEv: number;
  readonly incidentEv: number;
};

/** The EV a hold is counted from; a frame without a patch of sky counts from the whole sky in it. */
export const holdReferenceEv = (under: HoldUnder, references: HoldReferences): number => {
  switch (under) {
    case 'patch':
      return references.patchEv ?? references.meanEv;
    case 'frame':
      return references.meanEv;
    case 'incident':
      return references.incidentEv;
  }
};

/** The same camera setting counted from another reference: hold under A + EV(A) − EV(B). */
export const translateHold = (
  hold: { readonly stops: number; readonly under: HoldUnder },
  under: HoldUnder,
  references: HoldReferences,
): { readonly stops: number; readonly under: HoldUnder } => ({
  stops: hold.stops + holdReferenceEv(hold.under, references) - holdReferenceEv(under, references),
  under,
});

/** The references as filters that part the sky let them through; an incident meter has none before it. */
export const filteredReferences = (
  input: Pick<RecipeInput, 'sky' | 'skyFilterStops' | 'incidentEv'>,
): HoldReferences => {
  const { patch, frame } = input.skyFilterStops ?? { patch: 0, frame: 0 };
  const { patchEv, meanEv } = input.sky;
  return {
    patchEv: patchEv === null ? null : patchEv - patch,
    meanEv: meanEv - frame,
    incidentEv: input.incidentEv,
  };
};
