import { isGhostEdgeLikely } from '../exposure/motion-blur.ts';
import { coldCapacityShare, emptiesFirst } from '../strobe/battery.ts';
import { checkRecipe, type RecipeCheck } from '../strobe/check-recipe.ts';
import { filteredReferences, holdReferenceEv, translateHold } from '../strobe/hold-reference.ts';
import type { Recipe, RecipeInput, RecipeProblem } from '../strobe/recipe.ts';
import { solveRecipe } from '../strobe/solve-recipe.ts';
import { fail, ok, type Result } from '../units/result.ts';
import type { Filter, Kit } from './kit.ts';
import { lightInFrame } from './light-in-frame.ts';
import { lightPace, type LightPace } from './light-pace.ts';
import { lightTiming, type LightTiming } from './light-timing.ts';
import { setupCase, type SetupCase, type SetupCaseInput, type SetupGap } from './setup-case.ts';
import { filtersOf } from './setup-filters.ts';
import { HOLD_REFERENCES, type HoldReference } from './setup-schema.ts';

/** The same hold counted from each reference. */
export type HoldTranslation = Readonly<Record<HoldReference, number>>;

export type WorkingSetup = {
  readonly recipe: Recipe;
  /** The recipe run forward by the second path. */
  readonly forward: RecipeCheck;
  readonly filters: readonly Filter[];
  /** What is left at the bright end of the sky condition's spread. */
  readonly brightEndInHandStops: number;
  readonly pace: readonly LightPace[];
  /** By place in `sources`. */
  readonly timing: readonly LightTiming[];
  /** The light whose charge ends first. */
  readonly emptiesFirstLightId: string | null;
  readonly ghostEdgeLikely: boolean;
};

export type SetupView = SetupCase & {
  readonly input: RecipeInput;
  readonly referenceEv: number;
  /** ± of the reference; eight of ten minutes lie inside. */
  readonly referenceSpreadStops: number;
  readonly hold: HoldTranslation;
  readonly answer: Result<WorkingSetup, RecipeProblem>;
  /** Lights whose face stands in the picture. */
  readonly lightsInFrame: readonly string[];
};

export type SetupViewGap =
  | SetupGap
  | { readonly kind: 'no-sky' }
  /** Found a recipe that does not land by the second path; it is not shown. */
  | { readonly kind: 'does-not-land'; readonly worstStops: number };

/** Everything a setup shows for one minute. */
export function setupView(asked: SetupCaseInput): Result<SetupView, SetupViewGap> {
  const made = setupCase(asked);
  if (!made.ok) return made;
  const { input, light } = made.value;
  if (input === null) return fail({ kind: 'no-sky' });
  const references = { ...input.sky, incidentEv: input.incidentEv };
  const seen = filteredReferences(input);
  const translated = Object.fromEntries(
    HOLD_REFERENCES.map((under) => [under, translateHold(input.hold, under, seen).stops]),
  ) as HoldTranslation;
  const referenceSpreadStops =
    input.hold.under === 'incident'
      ? light.daylight.spreadStops
      : input.hold.under === 'patch' && input.sky.patchEv !== null
        ? light.patchSpreadStops
        : light.frameSpreadStops;
  const solved = solveRecipe(input);
  const view = {
    ...made.value,
    input,
    referenceEv: holdReferenceEv(input.hold.under, references),
    referenceSpreadStops,
    hold: translated,
    lightsInFrame: made.value.sources
      .filter(({ stand }) => lightInFrame(stand, made.value.setup, made.value.framing))
      .map(({ lightId }) => lightId),
  };
  if (!solved.ok) return ok({ ...view, answer: solved });
  const forward = checkRecipe(input, solved.value);
  if (!forward.lands) return fail({ kind: 'does-not-land', worstStops: forward.worstStops });
  return ok({
    ...view,
    answer: ok(working(made.value, asked.kit, solved.value, forward, referenceSpreadStops)),
  });
}

function working(
  base: SetupCase,
  kit: Kit,
  recipe: Recipe,
  forward: RecipeCheck,
  referenceSpreadStops: number,
): WorkingSetup {
  const capacityShare = coldCapacityShare(base.setup.airC);
  const lit = base.sources.map(({ lightId, head }, place) => ({
    lightId,
    head,
    powerStops: recipe.lights[place]?.powerStops ?? 0,
  }));
  const heads = lit.map(({ head, powerStops }) => ({
    popsPerChargeAtFull: head.popsPerCharge,
    powerStops,
  }));
  const first = emptiesFirst(heads, capacityShare);
  return {
    recipe,
    forward,
    filters: filtersOf(base.setup, kit, recipe).map(([, filter]) => filter),
    brightEndInHandStops: recipe.inHandStops - referenceSpreadStops,
    pace: lit.map((light) => lightPace(light, capacityShare)),
    timing: lit.map((light) =>
      lightTiming({
        ...light,
        shutterS: recipe.shutterS,
        syncShutterS: base.question.camera.syncShutterS,
        setup: base.setup,
        framing: base.framing,
      }),
    ),
    emptiesFirstLightId: first === null ? null : (base.sources[first.head]?.lightId ?? null),
    ghostEdgeLikely: isGhostEdgeLikely({
      shutterS: recipe.shutterS,
      motion: base.setup.motion,
      unlitStops: recipe.unlitOutStops,
      skyStops: recipe.skyStops,
    }),
  };
}
