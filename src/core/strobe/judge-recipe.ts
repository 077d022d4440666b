import { ratioFromStops, stopsFromRatio } from '../units/stops.ts';
import { leastCeiling } from './ceilings.ts';
import { checkRecipeInput } from './check-recipe-input.ts';
import { LANDING_STOPS } from './landing.ts';
import { neededRatio, strongestThrough, weakestThrough, type LightSide } from './light-sides.ts';
import { ambientRatioAt, fastestShutter, recipeCase, type RecipeCase } from './recipe-case.ts';
import type { LightRole, RecipeInput, RecipeProblemKind, SettingLimit } from './recipe.ts';

export type Judgement = {
  /** The first rule that breaks, or that none does. */
  readonly verdict: 'works' | RecipeProblemKind;
  /** By how much it breaks; 0 when it works. */
  readonly shortByStops: number;
  /** The side that breaks the rule, where one does. */
  readonly side: LightSide | null;
  /** Which end of the dials a 'no-setting' ran into. */
  readonly limit: SettingLimit | null;
  /** Reach less reference: negative when the sky lies above the reach. */
  readonly inHandStops: number;
  /** Brightest sky at the hold's reference that every light still meets, EV at ISO 100. */
  readonly reachEv: number;
  /** The role that runs out first. */
  readonly limitingRole: LightRole | null;
};

/**
 * Whether a setup works at one minute, without settling a dial: cheap enough for every step of a
 * day. Dials are taken as continuous between their ends, so a head with coarse steps may still
 * find no setting when the recipe is solved.
 */
export const judgeRecipe = (input: RecipeInput): Judgement => {
  if (checkRecipeInput(input).length > 0) return BAD_INPUT;
  return judgeCase(recipeCase(input));
};

const BAD_INPUT: Judgement = {
  verdict: 'bad-input',
  shortByStops: Number.NaN,
  side: null,
  limit: null,
  inHandStops: Number.NaN,
  reachEv: Number.NaN,
  limitingRole: null,
};

/** Sums of logarithms differ in the last digits; this is far below anything a dial shows. */
const ROUNDING_STOPS = 1e-6;

export const judgeCase = (question: RecipeCase): Judgement => {
  const { input, wantedEv, span, sides } = question;
  const ceiling = leastCeiling(input, sides, fastestShutter(question));
  const inHandStops = (ceiling?.ev ?? Number.POSITIVE_INFINITY) - wantedEv;
  const skyFilterStops = question.referenceEv - question.filteredEv;
  const found = (
    verdict: Judgement['verdict'],
    shortByStops: number,
    side: LightSide | null,
    limit: SettingLimit | null,
  ): Judgement => ({
    verdict,
    shortByStops,
    side,
    limit,
    inHandStops,
    reachEv: (ceiling?.ev ?? Number.POSITIVE_INFINITY) - input.hold.stops + skyFilterStops,
    limitingRole: ceiling?.side.role ?? null,
  });
  if (span.pinsOutsideStops > 0) return found('no-setting', span.pinsOutsideStops, null, 'between');
  if (inHandStops < -ROUNDING_STOPS)
    return found('sky-above-reach', -inHandStops, ceiling?.side ?? null, null);
  const unlitExcessStops =
    (input.ambientOutEv ?? input.ambientOnSubjectEv) -
    wantedEv -
    (question.keyTargetStops - input.unlitUnderStops);
  if (unlitExcessStops > ROUNDING_STOPS)
    return found('ambient-lights-the-face', unlitExcessStops, null, null);
  const heads = headWindow(question);
  if (heads.tooStrongStops > ROUNDING_STOPS)
    return found('head-too-strong', heads.tooStrongStops, heads.side, null);
  const gap = settingGap(question, heads);
  return gap.stops > LANDING_STOPS
    ? found('no-setting', gap.stops, null, gap.limit)
    : found('works', 0, null, null);
};

/** Flash EV: camera EV plus log2 of the time that divides the flash. The heads allow a span of it. */
type HeadWindow = {
  readonly fromEv: number;
  readonly toEv: number;
  /** How far a side lands above its target with its heads at their lowest power; 0: none does. */
  readonly tooStrongStops: number;
  readonly side: LightSide | null;
};

const headWindow = (question: RecipeCase): HeadWindow => {
  const { input, wantedEv, span, sides } = question;
  const ambient = ambientRatioAt(question, wantedEv);
  const slowestS = ratioFromStops(span.shutter.toStops);
  const slowestFlashStops =
    span.hssShutter === null
      ? span.shutter.toStops
      : span.hssShutter === span.shutter
        ? span.hssFlashStops
        : Math.max(span.shutter.toStops, span.hssFlashStops);
  let toEv = wantedEv + slowestFlashStops;
  for (const side of sides.all) {
    const needed = neededRatio(sides, side, ambient);
    if (needed > 0)
      toEv = Math.min(
        toEv,
        stopsFromRatio(strongestThrough(input, sides, side, slowestS) / needed),
      );
  }
  const highest = ratioFromStops(toEv);
  let fromEv = Number.NEGATIVE_INFINITY;
  let tooStrongStops = 0;
  let tooStrong: LightSide | null = null;
  for (const side of sides.all) {
    const needed = neededRatio(sides, side, ambient);
    const weakest = weakestThrough(input, sides, side, slowestS);
    const overStops = stopsFromRatio((weakest / highest + side.target - needed) / side.target);
    if (overStops > tooStrongStops) {
      tooStrongStops = overStops;
      tooStrong = side;
    }
    if (needed > 0) fromEv = Math.max(fromEv, stopsFromRatio(weakest / needed));
  }
  return { fromEv, toEv, tooStrongStops, side: tooStrong };
};

/** How far apart what the heads allow and what shutter, aperture, ISO and filters make lie. */
const settingGap = (
  { wantedEv, span }: RecipeCase,
  heads: HeadWindow,
): { readonly stops: number; readonly limit: SettingLimit } => {
  const darkestEv = span.aperture.toStops + span.filter.toStops - span.iso.fromStops;
  const brightestEv = span.aperture.fromStops + span.filter.fromStops - span.iso.toStops;
  const { shutter, hssShutter } = span;
  const synced =
    hssShutter === shutter
      ? null
      : gapBetween(
          Math.max(wantedEv + shutter.fromStops, heads.fromEv, brightestEv),
          Math.min(wantedEv + shutter.toStops, heads.toEv, darkestEv),
        );
  let stops = synced ?? Number.POSITIVE_INFINITY;
  if (hssShutter !== null) {
    const flashEv = wantedEv + span.hssFlashStops;
    const camera = gapBetween(
      Math.max(wantedEv + hssShutter.fromStops, brightestEv),
      Math.min(wantedEv + hssShutter.toStops, darkestEv),
    );
    stops = Math.min(
      stops,
      Math.max(camera, gapBetween(Math.max(flashEv, heads.fromEv), Math.min(flashEv, heads.toEv))),
    );
  }
  const limit =
    wantedEv + shutter.toStops < brightestEv
      ? 'too-dark'
      : wantedEv + (hssShutter ?? shutter).fromStops > darkestEv
        ? 'too-bright'
        : 'between';
  return { stops, limit };
};

const gapBetween = (lower: number, upper: number): number => Math.max(0, lower - upper);
