import { fail, ok, type Result } from '../units/result.ts';

type Fields = Readonly<Record<string, unknown>>;

/** Turns a document of one version into one of the next; it sets no version itself and never changes its argument. */
export type UpgradeStep = (older: Fields) => Fields;

/** The first step turns version 1 into 2, the second 2 into 3; version 1 is the first there is. */
export const SHOOT_STEPS: readonly UpgradeStep[] = [];
export const KIT_STEPS: readonly UpgradeStep[] = [];

export type VersionProblem =
  | { readonly kind: 'no-version'; readonly found: unknown }
  | { readonly kind: 'newer'; readonly found: number; readonly readsUpTo: number }
  | { readonly kind: 'not-upgradable'; readonly from: number; readonly to: number };

/** Brings a document of any earlier version to the present one, step by step; what comes out is still to be checked. */
export function upgradeDocument(
  document: Fields,
  steps: readonly UpgradeStep[],
): Result<Fields, VersionProblem> {
  const { version } = document;
  const present = steps.length + 1;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return fail({ kind: 'no-version', found: version });
  if (version > present) return fail({ kind: 'newer', found: version, readsUpTo: present });
  let upgraded = document;
  for (let from = version; from < present; from += 1)
    try {
      upgraded = { ...steps[from - 1]?.(upgraded), version: from + 1 };
    } catch {
      return fail({ kind: 'not-upgradable', from, to: from + 1 });
    }
  return ok(upgraded);
}
