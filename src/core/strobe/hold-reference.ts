import type { HoldUnder } from './recipe.ts';

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
