import type { UnfixedProblem } from '../strobe/attempt-recipe.ts';
import { faceAreaM2 } from '../strobe/head.ts';
import { judgeRecipe } from '../strobe/judge-recipe.ts';
import { changedCase } from './changed-case.ts';
import type { Kit } from './kit.ts';
import { inOrder } from './order-key.ts';
import type { SetupCase, SetupCaseInput } from './setup-case.ts';
import type { SetupChange, SetupFix } from './setup-fix.ts';
import type { SetupSource } from './setup-source.ts';
import { inWind } from './stand-in-wind.ts';

/** A way to have a light all the same in a gust that its stand is not put up in. */
export type WindVersion = SetupFix & {
  /** Why no recipe comes of it; null where one does. */
  readonly problem: UnfixedProblem | null;
};

/** Lights whose stand is not put up in the gust that is expected. */
export const blockedByWind = ({
  sources,
  setup,
}: Pick<SetupCase, 'sources' | 'setup'>): readonly SetupSource[] =>
  sources.filter((source) => inWind(source, setup.gustMS).kind === 'above-limit');

/**
 * With the smallest modifier of the kit, or its own where that is pinned: on each other stand that
 * bears the gust, and held in the hand. Each solved again.
 */
export function windVersions(
  asked: SetupCaseInput,
  base: SetupCase,
  lightId: string,
): readonly WindVersion[] {
  const { kit } = asked;
  const source = base.sources.find((one) => one.lightId === lightId);
  const { gustMS } = base.setup;
  if (source === undefined || gustMS === null) return [];
  const small = smallestModifier(kit, source);
  const bearing = inOrder(kit.stands)
    .filter(
      ([, { maxGustMS, maxHeightM }]) => maxGustMS >= gustMS && maxHeightM >= source.light.heightM,
    )
    .map(([standId]) => standId);
  return [...bearing, null].flatMap((standId): readonly WindVersion[] => {
    const change: SetupChange = { kind: 'stand', lightId, standId, ...small };
    const changed = changedCase(asked, base, [change]);
    if (changed === null) return [];
    const { inHandStops } = judgeRecipe(changed.input);
    return [
      {
        changes: [change],
        inHandStops,
        leastInHandStops: inHandStops,
        problem: changed.answer.ok ? null : changed.answer.problem,
      },
    ];
  });
}

/** By the area of its face, its diffuser on where it has one. */
function smallestModifier(
  kit: Kit,
  { light }: SetupSource,
): Pick<Extract<SetupChange, { kind: 'stand' }>, 'modifierId' | 'light'> {
  const own = { diffuser: light.diffuser, baffle: light.baffle, grid: light.grid };
  const [smallest] = inOrder(kit.modifiers).toSorted(
    ([, first], [, second]) => faceAreaM2(first) - faceAreaM2(second),
  );
  if (smallest === undefined || light.modifierPinned || smallest[0] === light.modifierId)
    return { modifierId: light.modifierId, light: own };
  const [modifierId, { diffuserStops }] = smallest;
  return {
    modifierId,
    light: { diffuser: diffuserStops !== null, baffle: false, grid: false },
  };
}
