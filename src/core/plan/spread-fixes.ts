import { judgeRecipe } from '../strobe/judge-recipe.ts';
import { changedCase } from './changed-case.ts';
import { evenings } from './evenings.ts';
import { setupCase, type SetupCase, type SetupCaseInput } from './setup-case.ts';
import type { SetupChange, SetupFix } from './setup-fix.ts';
import { isTooUneven, sideSpreads, type SideSpread } from './side-spread.ts';

/** A change that brings the faces of a side within the limit, and what it costs. */
export type SpreadFix = SetupFix & {
  readonly role: SideSpread['role'];
  /** What is left between best and least lit face. */
  readonly spreadStops: number;
  /** Stops of reach given up; negative where it gains. */
  readonly costsStops: number;
};

/**
 * What would even a key or a fill whose faces differ by more than the setup's limit: farther back,
 * higher, turned off the subject, an equal light from the other side; turned or doubled and back,
 * where turning or doubling alone is not enough. Each by the least that is enough, and solved again
 * for what it costs. Empty where nothing has to be evened.
 */
export function spreadFixes(asked: SetupCaseInput): readonly SpreadFix[] {
  const made = setupCase(asked);
  if (!made.ok || made.value.input === null) return [];
  const base = made.value;
  const nowStops = judgeRecipe(made.value.input).inHandStops;
  const solved = (role: SideSpread['role'], changes: readonly SetupChange[]): SpreadFix[] => {
    const changed = changedCase(asked, base, changes);
    const after = changed && sideOf(changed.case, role);
    if (!changed || !after || isTooUneven(after, base.setup)) return [];
    const { inHandStops } = judgeRecipe(changed.input);
    return [
      {
        changes,
        role,
        spreadStops: after.faces.spreadStops,
        inHandStops,
        leastInHandStops: inHandStops,
        costsStops: nowStops - inHandStops,
      },
    ];
  };
  return sideSpreads(base.sources, base.setup)
    .filter((side) => isTooUneven(side, base.setup))
    .flatMap((side) => {
      // A side of several lights is evened light by light, by hand.
      const source = base.sources.find(({ lightId }) => lightId === side.lightIds[0]);
      if (source === undefined || side.lightIds.length > 1) return [];
      return evenings(base, source).flatMap((first) => {
        for (const changes of first) {
          const fixes = solved(side.role, changes);
          if (fixes.length > 0) return fixes;
        }
        return [];
      });
    });
}

const sideOf = ({ sources, setup }: SetupCase, role: SideSpread['role']): SideSpread | undefined =>
  sideSpreads(sources, setup).find((side) => side.role === role);
