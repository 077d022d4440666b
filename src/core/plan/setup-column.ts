import { enterLight, emptyLightColumn, type LightColumn } from '../spot/light-column.ts';
import { holdReferenceEv } from '../strobe/hold-reference.ts';
import { judgeRecipe, type Judgement } from '../strobe/judge-recipe.ts';
import { civilDateOf, dayBoundsMs, dayOfYear } from '../units/civil-time.ts';
import { setupLight, type SetupLight, type SetupScene } from './setup-light.ts';
import { recipeInput, type SetupQuestion } from './setup-question.ts';
import { COLUMN_ROLES, VERDICTS, type Verdict } from './verdicts.ts';

export type SetupColumnInput = {
  readonly scene: SetupScene;
  /** Null: the light alone. */
  readonly question: SetupQuestion | null;
  readonly date: string;
  readonly stepMin: number;
};

/** A day of a setup: the light and, at every step, whether its lights hold the sky. */
export type SetupColumn = LightColumn & {
  /** The hold's reference. */
  readonly referenceEv: Float64Array;
  /** Brightest reference that every light still meets. */
  readonly reachEv: Float64Array;
  readonly inHandStops: Float64Array;
  /** By how much the first broken rule is broken; 0 where it works. */
  readonly shortByStops: Float64Array;
  /** Place in VERDICTS. */
  readonly verdict: Uint8Array;
  /** Place in COLUMN_ROLES. */
  readonly limitingRole: Uint8Array;
};

const MS_PER_MIN = 60_000;

/** Steps from the start of the date in its zone to before its end. */
export function setupColumn(input: SetupColumnInput): SetupColumn {
  const { scene, question, date, stepMin } = input;
  const { startMs, endMs } = dayBoundsMs(date, scene.zone);
  const count = Math.ceil((endMs - startMs) / (stepMin * MS_PER_MIN));
  const instantMs = Float64Array.from(
    { length: Math.max(0, count || 0) },
    (_, step) => startMs + step * stepMin * MS_PER_MIN,
  );
  const numbers = (): Float64Array => new Float64Array(instantMs.length).fill(NaN);
  const column: SetupColumn = {
    ...emptyLightColumn(instantMs),
    referenceEv: numbers(),
    reachEv: numbers(),
    inHandStops: numbers(),
    shortByStops: numbers(),
    verdict: new Uint8Array(instantMs.length).fill(VERDICTS.indexOf('not-asked')),
    limitingRole: new Uint8Array(instantMs.length),
  };
  const light = setupLight({ ...scene, skyFilters: question?.skyFilters ?? null });
  const day = dayOfYear(date);
  instantMs.forEach((instant, at) => {
    const there = light({ instantMs: instant, dayOfYear: day });
    enterLight(column, at, there);
    if (question !== null) enterJudgement(column, at, there, question);
  });
  return column;
}

function enterJudgement(
  column: SetupColumn,
  at: number,
  light: SetupLight,
  question: SetupQuestion,
): void {
  const input = recipeInput(question, light);
  if (input === null) {
    column.verdict[at] = VERDICTS.indexOf('no-sky');
    return;
  }
  const judgement = judgeRecipe(input);
  column.referenceEv[at] = holdReferenceEv(input.hold.under, {
    ...input.sky,
    incidentEv: input.incidentEv,
  });
  column.reachEv[at] = judgement.reachEv;
  column.inHandStops[at] = judgement.inHandStops;
  column.shortByStops[at] = judgement.shortByStops;
  column.verdict[at] = VERDICTS.indexOf(verdictOf(judgement));
  column.limitingRole[at] = COLUMN_ROLES.indexOf(judgement.limitingRole ?? 'none');
}

export function verdictOf(judgement: Judgement): Verdict {
  switch (judgement.verdict) {
    case 'works':
    case 'sky-above-reach':
    case 'ambient-lights-the-face':
    case 'head-too-strong':
      return judgement.verdict;
    case 'no-setting':
      return judgement.limit === 'too-bright' ? 'too-bright' : 'too-dark';
    case 'bad-input':
      return 'not-asked';
  }
}

/** The light of a setup at one minute, its date named by the spot's zone. */
export const setupLightAt = (scene: SetupScene, instantMs: number): SetupLight =>
  setupLight(scene)({
    instantMs,
    dayOfYear: dayOfYear(civilDateOf(instantMs, scene.zone)),
  });
