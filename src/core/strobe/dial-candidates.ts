import { DIAL_STEP_STOPS, dialScale } from '../exposure/dial-scale.ts';
import type { FilterStack } from '../exposure/lens-filter.ts';
import { stopsFromRatio } from '../units/stops.ts';
import type { CameraSpan } from './camera-span.ts';
import { lands, LANDING_STOPS } from './landing.ts';
import { neededRatio, strongestThrough } from './light-sides.ts';
import { ndStacks } from './nd-stacks.ts';
import { ambientRatioAt, fastestShutter, type RecipeCase } from './recipe-case.ts';

/** At and below 1/16 power a head recycles at once and its battery hardly notices. [lightingPractice] */
const CHEAP_POWER_STOPS = -4;
/** What a shutter clips of a flash at sync speed is back at slower ones; never more than this. */
const OVER_FULL_STOPS = 1;
/** A shutter farther off than this cannot land the sky. */
const NEAR_STOPS = LANDING_STOPS + 1e-3;
/** Two dial settings nearer than this are the same. */
export const SAME_STOPS = 1e-6;

/** The values that the dials beside the aperture may take, in stops. */
export type FreeDials = {
  readonly shutters: readonly number[];
  readonly isos: readonly number[];
  readonly stacks: readonly FilterStack[];
  /** Flash EV at which the hardest-working head is just at full power. */
  readonly hardestEv: number;
};

export const freeDials = (question: RecipeCase): FreeDials => ({
  shutters: shutterValues(question),
  isos: dialScale({ ...question.span.iso, stepStops: DIAL_STEP_STOPS.third }),
  stacks: ndStacks(question.input),
  hardestEv: hardestHeadEv(question),
});

/** One combination at a given aperture, and what it is ranked by. */
export type DialCandidate = {
  readonly apertureStops: number;
  /** From the aperture that was wished for. */
  readonly offWishStops: number;
  /** From the camera EV that was wanted. */
  readonly offWantedStops: number;
  readonly stack: FilterStack;
  readonly isoStops: number;
  readonly shutterStops: number;
  readonly flashStops: number;
  readonly cameraEv: number;
  /** Power of the hardest-working head, everything cheap alike. */
  readonly powerStops: number;
};

/** Every filter stack and ISO with the shutter that lands the sky, where there is one. */
export const dialCandidates = (
  question: RecipeCase,
  dials: FreeDials,
  aperture: { readonly stops: number; readonly wishStops: number },
): DialCandidate[] => {
  const apertureStops = aperture.stops;
  const { shutters, isos, stacks, hardestEv } = dials;
  const { wantedEv, span } = question;
  const otherFilterStops = question.input.otherFilterStops ?? 0;
  const fastest = shutters[0] ?? Number.NaN;
  const slowest = shutters[shutters.length - 1] ?? Number.NaN;
  const candidates: DialCandidate[] = [];
  for (const stack of stacks) {
    for (const isoStops of isos) {
      const settingEv = apertureStops + stack.stops + otherFilterStops - isoStops;
      const exactStops = settingEv - wantedEv;
      if (exactStops < fastest - NEAR_STOPS || exactStops > slowest + NEAR_STOPS) continue;
      const shutterStops = nearestValue(shutters, exactStops);
      const cameraEv = settingEv - shutterStops;
      if (!lands(cameraEv - wantedEv)) continue;
      const flashStops = isAboveSync(span, shutterStops) ? span.hssFlashStops : shutterStops;
      const powerStops = cameraEv + flashStops - hardestEv;
      if (powerStops > OVER_FULL_STOPS) continue;
      candidates.push({
        apertureStops,
        offWishStops: Math.abs(apertureStops - aperture.wishStops),
        offWantedStops: Math.abs(cameraEv - wantedEv),
        stack,
        isoStops,
        shutterStops,
        flashStops,
        cameraEv,
        powerStops: Math.max(powerStops, CHEAP_POWER_STOPS),
      });
    }
  }
  return candidates;
};

const isAboveSync = (span: CameraSpan, shutterStops: number): boolean =>
  span.hssShutter !== null &&
  (span.hssShutter === span.shutter || shutterStops < span.shutter.fromStops - SAME_STOPS);

/** Takes the best candidate out of the list; null when it is empty. */
export const takeBest = (candidates: DialCandidate[]): DialCandidate | null => {
  let best: DialCandidate | null = null;
  let place = -1;
  for (let index = 0; index < candidates.length; index += 1) {
    const candidate = candidates[index];
    if (candidate === undefined || (best !== null && rank(candidate, best) >= 0)) continue;
    best = candidate;
    place = index;
  }
  if (best !== null) candidates.splice(place, 1);
  return best;
};

const rank = (first: DialCandidate, second: DialCandidate): number =>
  batteryRank(first) - batteryRank(second) ||
  compare(first.isoStops, second.isoStops) ||
  compare(missRank(first), missRank(second)) ||
  compare(first.offWishStops, second.offWishStops) ||
  compare(first.shutterStops, second.shutterStops) ||
  first.stack.filters.length - second.stack.filters.length;

/** Powers within a third of a stop cost the battery the same. [lightingPractice] */
const batteryRank = ({ powerStops }: DialCandidate): number => Math.round(powerStops * 3);

/** A sky within a tenth of a stop of where it was wanted is there: nothing shown is finer. */
const missRank = ({ offWantedStops }: DialCandidate): number =>
  offWantedStops <= 0.1 ? 0 : offWantedStops;

const compare = (first: number, second: number): number =>
  Math.abs(first - second) < SAME_STOPS ? 0 : first - second;

const nearestValue = (ascending: readonly number[], wanted: number): number => {
  let below = 0;
  let above = ascending.length - 1;
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if ((ascending[middle] ?? 0) <= wanted) below = middle;
    else above = middle;
  }
  const lower = ascending[below] ?? Number.NaN;
  const upper = ascending[above] ?? Number.NaN;
  return wanted - lower <= upper - wanted ? lower : upper;
};

const shutterValues = ({ input, span }: RecipeCase): readonly number[] => {
  const step = DIAL_STEP_STOPS[input.camera.step ?? 'third'];
  const synced = dialScale({ ...span.shutter, stepStops: step });
  if (span.hssShutter === null || span.hssShutter === span.shutter) return synced;
  return [...dialScale({ ...span.hssShutter, stepStops: step }).slice(0, -1), ...synced];
};

const hardestHeadEv = (question: RecipeCase): number => {
  const { input, sides, wantedEv } = question;
  const { shutterS } = fastestShutter(question);
  const ambient = ambientRatioAt(question, wantedEv);
  let hardestEv = Number.POSITIVE_INFINITY;
  for (const side of sides.all) {
    const needed = neededRatio(sides, side, ambient);
    if (needed <= 0) continue;
    hardestEv = Math.min(
      hardestEv,
      stopsFromRatio(strongestThrough(input, sides, side, shutterS) / needed),
    );
  }
  return hardestEv;
};
