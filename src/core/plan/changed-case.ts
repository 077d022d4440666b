import { produce } from 'immer';

import { attemptRecipe } from '../strobe/attempt-recipe.ts';
import { withOneMoreNd } from '../strobe/nd-stacks.ts';
import type { Recipe, RecipeInput, RecipeProblem } from '../strobe/recipe.ts';
import { instantAtClock } from '../units/civil-time.ts';
import type { Result } from '../units/result.ts';
import { setupCase, type SetupCase, type SetupCaseInput } from './setup-case.ts';
import { changeEdit, type SetupChange } from './setup-fix.ts';

/** A setup with changes made: what is asked now, and its answer. */
export type ChangedCase = {
  readonly asked: SetupCaseInput;
  readonly case: SetupCase;
  readonly input: RecipeInput;
  readonly answer: Result<Recipe, Omit<RecipeProblem, 'fixes'>>;
};

/** The same setup with changes made to the document, or supposed where the kit lacks them; null when nothing can be asked then. */
export function changedCase(
  asked: SetupCaseInput,
  base: SetupCase,
  changes: readonly SetupChange[],
): ChangedCase | null {
  const shoot = produce(asked.shoot, (draft) => {
    for (const change of changes) changeEdit(asked.setupId, change)?.(draft);
  });
  const instantMs = instantAfter(asked, base, changes);
  if (instantMs === null) return null;
  const now = { ...asked, shoot, instantMs };
  const sameLight = !changes.some((change) => MOVES_THE_LIGHT.has(change.kind));
  const made = setupCase(now, sameLight ? base.light : undefined);
  if (!made.ok || made.value.input === null) return null;
  const { sources } = made.value;
  const input = changes.reduce(
    (before, change) => supposed(before, change, sources),
    made.value.input,
  );
  return { asked: now, case: made.value, input, answer: attemptRecipe(input) };
}

/** Changes of where the camera looks or when; all others leave sky and ambient as they are. */
const MOVES_THE_LIGHT: ReadonlySet<SetupChange['kind']> = new Set([
  'clock',
  'bearing',
  'tilt',
  'focal-length',
]);

function instantAfter(
  { shoot, instantMs }: SetupCaseInput,
  { spot }: SetupCase,
  changes: readonly SetupChange[],
): number | null {
  for (const change of changes)
    if (change.kind === 'clock') return instantAtClock(shoot.date, change.clock, spot.zone);
  return instantMs;
}

/** What no document can hold: a camera, a filter or a darkening that is only supposed. */
function supposed(
  input: RecipeInput,
  change: SetupChange,
  sources: SetupCase['sources'],
): RecipeInput {
  switch (change.kind) {
    case 'sync-shutter':
      return {
        ...input,
        camera: {
          ...input.camera,
          syncShutterS: change.shutterS,
          slowestShutterS: Math.max(change.shutterS, input.camera.slowestShutterS),
        },
      };
    case 'nd':
      return withOneMoreNd(input, change.stops);
    case 'head-nd':
      return {
        ...input,
        lights: input.lights.map((light, place) =>
          change.lightIds.includes(sources[place]?.lightId ?? '')
            ? { ...light, lossStops: light.lossStops + change.stops }
            : light,
        ),
      };
    case 'polariser': {
      const { patchEv, meanEv } = input.sky;
      return {
        ...input,
        sky: {
          patchEv: patchEv === null ? null : patchEv - change.upToStops,
          meanEv: meanEv - change.upToStops,
        },
      };
    }
    default:
      return input;
  }
}
