import { inOrder } from './order-key.ts';
import type { PlanBChange } from './plan-b-option.ts';
import { headsFree } from './recipe-fix-changes.ts';
import type { SetupCase, SetupCaseInput } from './setup-case.ts';

/**
 * Ways to do without one unit of a light's head: another of it from the car (nothing changes), one
 * unit fewer in the light, another head of the kit that is free, for a key the head of another
 * light, and the light left out where it is not the only key.
 */
export function headLossChanges(
  { kit }: SetupCaseInput,
  base: SetupCase,
  lightId: string,
  /** Whether a head may be put in its place. */
  mayTake: (headId: string) => boolean,
): readonly (readonly PlanBChange[])[] {
  const lost = base.sources.find((source) => source.lightId === lightId);
  if (lost === undefined) return [];
  const { light, head } = lost;
  const ways: (readonly PlanBChange[])[] = [];
  if (mayTake(light.headId) && headsFree(base, light.headId, head.owned) > 0) ways.push([]);
  if (light.headCount > 1)
    ways.push([{ kind: 'heads', lightId, headCount: light.headCount - 1, owned: true }]);
  for (const [headId, { owned }] of inOrder(kit.heads))
    if (
      headId !== light.headId &&
      mayTake(headId) &&
      headsFree(base, headId, owned) >= light.headCount
    )
      ways.push([{ kind: 'swap-head', lightId, headId }]);
  const keys = base.sources.filter((source) => source.light.role === 'key').length;
  if (light.role === 'key' && keys === 1) ways.push(...takenFromOthers(base, lightId, mayTake));
  else ways.push([{ kind: 'leave-out', lightIds: [lightId] }]);
  return ways;
}

/** Without a key there is no picture: a fill, a rim or a background gives its head. */
const takenFromOthers = (
  { sources }: SetupCase,
  keyId: string,
  mayTake: (headId: string) => boolean,
): readonly (readonly PlanBChange[])[] => {
  const key = sources.find(({ lightId }) => lightId === keyId);
  return sources
    .filter(
      ({ lightId, light }) =>
        lightId !== keyId &&
        mayTake(light.headId) &&
        light.headCount >= (key?.light.headCount ?? 1),
    )
    .map(({ lightId, light }): readonly PlanBChange[] => [
      ...(light.headId === key?.light.headId
        ? []
        : [{ kind: 'swap-head' as const, lightId: keyId, headId: light.headId }]),
      { kind: 'leave-out', lightIds: [lightId] },
    ]);
};
