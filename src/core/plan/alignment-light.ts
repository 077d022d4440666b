import { holdReferenceEv } from '../strobe/hold-reference.ts';
import { judgeRecipe } from '../strobe/judge-recipe.ts';
import type { LightRole } from '../strobe/recipe.ts';
import { civilDateOf, dayOfYear } from '../units/civil-time.ts';
import { verdictOf } from './setup-column.ts';
import type { Verdict } from './verdicts.ts';
import { setupLight, type SetupLight, type SetupScene } from './setup-light.ts';
import { recipeInput, type SetupQuestion } from './setup-question.ts';

/** Whether a setup's lights hold the sky of a minute. */
export type AlignmentHold = {
  readonly verdict: Verdict;
  /** Reach less reference. */
  readonly inHandStops: number;
  /** By how much the first broken rule is broken; 0 where it works. */
  readonly shortByStops: number;
  /** The light that breaks the rule, where one does. */
  readonly role: LightRole | null;
  /** The hold's reference, EV at ISO 100. */
  readonly referenceEv: number;
  /** ± of the reference; eight of ten minutes lie inside. */
  readonly referenceSpreadStops: number;
};

/** The light at the minute of an alignment. */
export type AlignmentLight = {
  /** Mean of the sky in the frame, EV at ISO 100; null when the frame shows none. */
  readonly skyEv: number | null;
  readonly skySpreadStops: number;
  /** The sun itself is in the frame; it clips at any hold. */
  readonly sunInFrame: boolean;
  /** Null without a setup or without sky. */
  readonly hold: AlignmentHold | null;
};

/** The light of a scene and how its lights stand, as a function of time. */
export function alignmentLight(
  scene: SetupScene,
  question: SetupQuestion | null,
): (instantMs: number) => AlignmentLight {
  const read = setupLight({ ...scene, skyFilters: question?.skyFilters ?? null });
  return (instantMs) => {
    const light = read({ instantMs, dayOfYear: dayOfYear(civilDateOf(instantMs, scene.zone)) });
    return {
      skyEv: light.skyInFrame?.meanEv ?? null,
      skySpreadStops: light.frameSpreadStops,
      sunInFrame: light.skyInFrame?.sunInFrame === true,
      hold: question === null ? null : holdAt(question, light),
    };
  };
}

function holdAt(question: SetupQuestion, light: SetupLight): AlignmentHold | null {
  const input = recipeInput(question, light);
  if (input === null) return null;
  const judgement = judgeRecipe(input);
  const { under } = input.hold;
  const { patchEv, meanEv } = input.sky;
  return {
    verdict: verdictOf(judgement),
    inHandStops: judgement.inHandStops,
    shortByStops: judgement.shortByStops,
    role: judgement.side?.role ?? null,
    referenceEv: holdReferenceEv(under, { patchEv, meanEv, incidentEv: input.incidentEv }),
    referenceSpreadStops:
      under === 'incident'
        ? light.daylight.spreadStops
        : under === 'patch' && patchEv !== null
          ? light.patchSpreadStops
          : light.frameSpreadStops,
  };
}
