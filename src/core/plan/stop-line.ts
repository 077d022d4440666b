import { fNumberFromStops } from '../exposure/aperture-scale.ts';
import { isoFromStops } from '../exposure/iso-scale.ts';
import { shutterFromStops } from '../exposure/shutter-scale.ts';
import { attemptRecipe, type UnfixedProblem } from '../strobe/attempt-recipe.ts';
import { checkRecipe, type RecipeCheck } from '../strobe/check-recipe.ts';
import { LANDING_STOPS } from '../strobe/landing.ts';
import type { Recipe, RecipeInput } from '../strobe/recipe.ts';
import { fail, ok, type Result } from '../units/result.ts';
import {
  dialStopsOf,
  dialValues,
  rung,
  type DialStops,
  type LadderDial,
  type Rung,
  type StopOrder,
} from './stop-ladder.ts';

/** Why a line does not go on with the dial that was next. */
export type StopLimit =
  /** No ND left to take off, widest or smallest aperture, slowest or fastest shutter, ISO at an end. */
  | { readonly kind: 'dial-at-end'; readonly dial: LadderDial }
  | { readonly kind: 'dial-pinned'; readonly dial: LadderDial }
  /** Places in `lights`: they cannot go as low as that dial would ask, or not as high. */
  | { readonly kind: 'head-at-lowest' | 'head-at-full'; readonly lights: readonly number[] };

export type DialChange = {
  readonly dial: LadderDial;
  /** Stops of ND, f-number, seconds or ISO. */
  readonly from: number;
  readonly to: number;
};

export type HeadChange = {
  /** Place in `lights`. */
  readonly light: number;
  /** 0 full, −1 half. */
  readonly fromPowerStops: number;
  readonly toPowerStops: number;
};

export type StopSetting = {
  readonly recipe: Recipe;
  /** The recipe run forward by the second path; it lands. */
  readonly forward: RecipeCheck;
  /** Against the line before. */
  readonly dials: readonly DialChange[];
  readonly heads: readonly HeadChange[];
  readonly limits: readonly StopLimit[];
  /** The order of the setup led nowhere; solved anew from nothing. */
  readonly solvedAnew: boolean;
};

export type StopLineGap = {
  readonly problem: UnfixedProblem;
  readonly limits: readonly StopLimit[];
};

/** How finely what the heads follow is taken back where they cannot follow. */
const BACK_STOPS = 1 / 3;

/**
 * The settings some whole stops after the beginning, in the setup's own order, every head settled
 * on its own dial and the whole run forward; or what stands in the way.
 */
export function stopLine(line: {
  /** At the beginning. */
  readonly start: Recipe;
  /** Of the line before. */
  readonly before: Recipe;
  /** At the time of the line. */
  readonly input: RecipeInput;
  /** Since the beginning: −1 is a stop darker. */
  readonly stops: number;
  readonly order: StopOrder;
}): Result<StopSetting, StopLineGap> {
  const { start, before, input, order } = line;
  const values = dialValues(input);
  const openStops = -line.stops;
  const headLimits: StopLimit[] = [];
  let problem: UnfixedProblem | null = null;
  const least = Math.abs(openStops);
  for (let follow = least; follow > -BACK_STOPS / 2; follow -= BACK_STOPS) {
    const step = rung({
      start: dialStopsOf(start),
      values,
      order,
      openStops,
      headsFollowStops: Math.max(0, follow),
    });
    if (Math.abs(step.leftStops) > LANDING_STOPS) {
      problem ??= noRoom(step, openStops);
      break;
    }
    const answer = settle(input, step, before);
    const limits = [...headLimits, ...dialLimits(input, step)];
    if (answer.ok) return ok(settingOf(before, answer.value, limits, false));
    problem ??= answer.problem;
    const limit = headLimit(answer.problem);
    if (limit === null) break;
    if (headLimits.length === 0) headLimits.push(limit);
  }
  const anew = attemptRecipe(input);
  const landed = anew.ok ? landing(input, anew.value) : null;
  if (landed !== null) return ok(settingOf(before, landed, headLimits, true));
  return fail({
    problem: anew.ok ? (problem ?? NOTHING_LANDS) : anew.problem,
    limits: headLimits,
  });
}

type Landed = { readonly recipe: Recipe; readonly forward: RecipeCheck };

/** Heads stay untouched while only the shutter is turned and all still lands. */
function settle(input: RecipeInput, step: Rung, before: Recipe): Result<Landed, UnfixedProblem> {
  const { dials } = step;
  const pins = {
    ...input.pins,
    shutterS: shutterFromStops(dials.shutter),
    fNumber: fNumberFromStops(dials.aperture),
    iso: isoFromStops(dials.iso),
    ndStops: dials.nd,
    ndUpToStops: undefined,
  };
  const untouched = before.lights.map(({ powerStops }) => powerStops);
  const tries = onlyShutter(dials, before)
    ? [untouched, input.pins?.powerStops]
    : [input.pins?.powerStops];
  let problem: UnfixedProblem = NOTHING_LANDS;
  for (const powerStops of tries) {
    const answer = attemptRecipe({ ...input, pins: { ...pins, powerStops } });
    const landed = answer.ok ? landing(input, answer.value) : null;
    if (landed !== null) return ok(landed);
    if (!answer.ok) problem = answer.problem;
  }
  return fail(problem);
}

const landing = (input: RecipeInput, recipe: Recipe): Landed | null => {
  const forward = checkRecipe(input, recipe);
  return forward.lands ? { recipe, forward } : null;
};

const NOTHING_LANDS: UnfixedProblem = { kind: 'no-setting', shortByStops: 0, limit: 'between' };
const SAME_STOPS = 0.02;

const onlyShutter = (dials: DialStops, before: Recipe): boolean => {
  const stood = dialStopsOf(before);
  return (['nd', 'aperture', 'iso'] as const).every(
    (dial) => Math.abs(dials[dial] - stood[dial]) < SAME_STOPS,
  );
};

const noRoom = ({ leftStops }: Rung, openStops: number): UnfixedProblem => ({
  kind: 'no-setting',
  shortByStops: Math.abs(leftStops),
  limit: openStops > 0 ? 'too-dark' : 'too-bright',
});

function headLimit({ kind, lights }: UnfixedProblem): StopLimit | null {
  switch (kind) {
    case 'head-too-strong':
      return { kind: 'head-at-lowest', lights: lights ?? [] };
    case 'sky-above-reach':
      return { kind: 'head-at-full', lights: lights ?? [] };
    case 'ambient-lights-the-face':
    case 'no-setting':
    case 'bad-input':
      return null;
  }
}

/** Of the dials that had to be passed over; a bare lens has no ND that could come off. */
const dialLimits = ({ pins }: RecipeInput, { spent, dials }: Rung): readonly StopLimit[] =>
  spent.flatMap((dial): StopLimit[] => {
    const pin = {
      nd: pins?.ndStops,
      aperture: pins?.fNumber,
      shutter: pins?.shutterS,
      iso: pins?.iso,
    };
    if (pin[dial] !== undefined) return [{ kind: 'dial-pinned', dial }];
    return dial === 'nd' && dials.nd === 0 ? [] : [{ kind: 'dial-at-end', dial }];
  });

const shown = ({ ndStops, fNumber, shutterS, iso }: Recipe): Record<LadderDial, number> => ({
  nd: ndStops,
  aperture: fNumber,
  shutter: shutterS,
  iso,
});

function settingOf(
  before: Recipe,
  { recipe, forward }: Landed,
  limits: readonly StopLimit[],
  solvedAnew: boolean,
): StopSetting {
  const [stood, stands] = [dialStopsOf(before), dialStopsOf(recipe)];
  return {
    recipe,
    forward,
    dials: (['nd', 'aperture', 'shutter', 'iso'] as const)
      .filter((dial) => Math.abs(stands[dial] - stood[dial]) > SAME_STOPS)
      .map((dial) => ({ dial, from: shown(before)[dial], to: shown(recipe)[dial] })),
    heads: recipe.lights.flatMap(({ powerStops }, light): HeadChange[] => {
      const fromPowerStops = before.lights[light]?.powerStops ?? powerStops;
      return Math.abs(powerStops - fromPowerStops) < SAME_STOPS
        ? []
        : [{ light, fromPowerStops, toPowerStops: powerStops }];
    }),
    limits,
    solvedAnew,
  };
}
