import { editSetup } from './edits.ts';
import { produce } from 'immer';

import { changedOption, sorted, type PlanBOption } from './plan-b-option.ts';
import { setupCase, type SetupCase, type SetupCaseInput } from './setup-case.ts';
import { blockedByWind, windVersions } from './wind-versions.ts';

export type WindCard = {
  readonly kind: 'wind';
  /** The gust that is expected where a stand does not bear it, else the least that one does not. */
  readonly gustMS: number;
  readonly expected: boolean;
  /** Lights whose stand is not put up in it. */
  readonly lightIds: readonly string[];
  /** All of those lights changed together: small modifiers, other stands, held in the hand. */
  readonly options: readonly PlanBOption[];
};

/** A gust just above a limit, as it is given. */
const ABOVE_MS = 0.5;
const STRONGEST_MS = 40;

/** What to do in more wind than a stand of the setup bears; null where no light stands on one. */
export function windCard(asked: SetupCaseInput, base: SetupCase): WindCard | null {
  const expected = blockedByWind(base).length > 0;
  const limits = base.sources.flatMap(({ carrier }) => carrier?.maxGustMS ?? []);
  if (limits.length === 0) return null;
  const gustMS = expected
    ? (base.setup.gustMS ?? 0)
    : Math.min(STRONGEST_MS, Math.min(...limits) + ABOVE_MS);
  const windy = {
    ...asked,
    shoot: produce(asked.shoot, (draft) => editSetup(asked.setupId, { gustMS })(draft)),
  };
  const made = setupCase(windy, base.light);
  if (!made.ok) return null;
  const blocked = blockedByWind(made.value);
  const versions = blocked.map(({ lightId }) =>
    windVersions(windy, made.value, lightId).flatMap(({ changes }) => changes),
  );
  const most = Math.max(0, ...versions.map(({ length }) => length));
  // The last version of each is the one held in the hand: shorter lists repeat it.
  const options = Array.from({ length: most }, (_, place) =>
    versions.flatMap((changes) => changes[place] ?? changes.at(-1) ?? []),
  ).flatMap((changes) => changedOption(windy, made.value, changes) ?? []);
  return {
    kind: 'wind',
    gustMS,
    expected,
    lightIds: blocked.map(({ lightId }) => lightId),
    options: sorted(options),
  };
}
