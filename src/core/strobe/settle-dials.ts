import { stopsFromFNumber } from '../exposure/aperture-scale.ts';
import { DIAL_STEP_STOPS, dialScale } from '../exposure/dial-scale.ts';
import { filterStacks, type FilterStack } from '../exposure/lens-filter.ts';
import { ratioFromStops, stopsFromRatio } from '../units/stops.ts';
import { MAX_STACKED, type CameraSpan } from './camera-span.ts';
import { lands, LANDING_STOPS } from './landing.ts';
import { neededRatio, strongestThrough } from './light-sides.ts';
import { ambientRatioAt, fastestShutter, type RecipeCase } from './recipe-case.ts';
import { settleHeads, type SettledHeads } from './settle-heads.ts';

export type SettledDials = {
  readonly shutterStops: number;
  readonly apertureStops: number;
  readonly isoStops: number;
  readonly stack: FilterStack;
  readonly heads: SettledHeads;
};

/** f/5.6, when no aperture is wished for. */
const DEFAULT_APERTURE_STOPS = 5;
/** At and below 1/16 power a head recycles at once and its battery hardly notices. [lightingPractice] */
const CHEAP_POWER_STOPS = -4;
/** What a shutter clips of a flash at sync speed is back at slower ones; never more than this. */
const OVER_FULL_STOPS = 1;
/** A shutter farther off than this cannot land the sky. */
const NEAR_STOPS = LANDING_STOPS + 1e-3;
/** Two dial settings nearer than this are the same. */
const SAME_STOPS = 1e-6;

/**
 * The best combination of dial values that lands: nearest to the wished aperture, then the least
 * power of the hardest-working head, then the lowest ISO, then the shortest shutter, then the
 * fewest filters. One in which a head stops at an end of its dial short of its exact power is
 * taken only when there is no other.
 */
export const settleDials = (question: RecipeCase): SettledDials | null => {
  const { input, span } = question;
  const step = DIAL_STEP_STOPS[input.camera.step ?? 'third'];
  const apertures = dialScale({ ...span.aperture, stepStops: step });
  const search: Search = {
    question,
    shutters: shutterValues(question, step),
    isos: dialScale({ ...span.iso, stepStops: DIAL_STEP_STOPS.third }),
    stacks: possibleStacks(question),
    hardestEv: hardestHeadEv(question),
    tried: new Map(),
  };
  const wish =
    input.wish === undefined ? DEFAULT_APERTURE_STOPS : stopsFromFNumber(input.wish.fNumber);
  let atAnEnd: SettledDials | null = null;
  for (const apertureStops of nearestFirst(apertures, wish)) {
    const best = bestAtAperture(search, apertureStops);
    if (best === null) continue;
    if (!best.heads.atAnEnd) return best;
    atAnEnd ??= best;
  }
  return atAnEnd;
};

type Search = {
  readonly question: RecipeCase;
  readonly shutters: readonly number[];
  readonly isos: readonly number[];
  readonly stacks: readonly FilterStack[];
  /** Flash EV at which the hardest-working head is just at full power. */
  readonly hardestEv: number;
  /** Heads settled so far: many combinations ask the same of them. */
  readonly tried: Map<number, SettledHeads | null>;
};

/** One combination at a given aperture, and what it is ranked by. */
type Candidate = {
  readonly stack: FilterStack;
  readonly isoStops: number;
  readonly shutterStops: number;
  readonly flashStops: number;
  readonly cameraEv: number;
  /** Power of the hardest-working head, everything cheap alike. */
  readonly powerStops: number;
};

const bestAtAperture = (search: Search, apertureStops: number): SettledDials | null => {
  const candidates = candidatesAt(search, apertureStops);
  let atAnEnd: SettledDials | null = null;
  while (candidates.length > 0) {
    const candidate = takeBest(candidates);
    const heads = headsFor(search, candidate);
    if (heads === null) continue;
    const { stack, isoStops, shutterStops } = candidate;
    const settled = { shutterStops, apertureStops, isoStops, stack, heads };
    if (!heads.atAnEnd) return settled;
    atAnEnd ??= settled;
  }
  return atAnEnd;
};

const headsFor = (search: Search, candidate: Candidate): SettledHeads | null => {
  const { cameraEv, flashStops, shutterStops } = candidate;
  const key = Math.round(cameraEv * 1e5) * 1e7 + Math.round(flashStops * 1e5);
  const known = search.tried.get(key);
  if (known !== undefined) return known;
  const heads = settleHeads(search.question, {
    cameraEv,
    shutterS: ratioFromStops(shutterStops),
    flashShutterS: ratioFromStops(flashStops),
  });
  search.tried.set(key, heads);
  return heads;
};

/** Every filter stack and ISO with the shutter that lands the sky, where there is one. */
const candidatesAt = (search: Search, apertureStops: number): Candidate[] => {
  const { question, shutters, isos, stacks, hardestEv } = search;
  const { wantedEv, span } = question;
  const otherFilterStops = question.input.otherFilterStops ?? 0;
  const fastest = shutters[0] ?? Number.NaN;
  const slowest = shutters[shutters.length - 1] ?? Number.NaN;
  const candidates: Candidate[] = [];
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

/** Takes the best candidate out of a list that is not empty. */
const takeBest = (candidates: Candidate[]): Candidate => {
  let best = 0;
  for (let index = 1; index < candidates.length; index += 1)
    if (rank(candidates[index] as Candidate, candidates[best] as Candidate) < 0) best = index;
  const taken = candidates[best] as Candidate;
  candidates[best] = candidates[candidates.length - 1] as Candidate;
  candidates.pop();
  return taken;
};

const rank = (first: Candidate, second: Candidate): number =>
  compare(first.powerStops, second.powerStops) ||
  compare(first.isoStops, second.isoStops) ||
  compare(first.shutterStops, second.shutterStops) ||
  first.stack.filters.length - second.stack.filters.length;

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

/** The same values, the one nearest to the wish first. */
const nearestFirst = (ascending: readonly number[], wish: number): readonly number[] => {
  const ordered: number[] = [];
  let above = 0;
  while (above < ascending.length && (ascending[above] ?? 0) < wish) above += 1;
  let below = above - 1;
  while (ordered.length < ascending.length) {
    const lower = ascending[below];
    const upper = ascending[above];
    if (upper === undefined || (lower !== undefined && wish - lower <= upper - wish + SAME_STOPS)) {
      ordered.push(lower ?? Number.NaN);
      below -= 1;
    } else {
      ordered.push(upper);
      above += 1;
    }
  }
  return ordered;
};

const shutterValues = ({ span }: RecipeCase, step: number): readonly number[] => {
  const synced = dialScale({ ...span.shutter, stepStops: step });
  if (span.hssShutter === null || span.hssShutter === span.shutter) return synced;
  return [...dialScale({ ...span.hssShutter, stepStops: step }).slice(0, -1), ...synced];
};

const possibleStacks = ({ input }: RecipeCase): readonly FilterStack[] => {
  const stacks = filterStacks(input.ndStops, input.maxStacked ?? MAX_STACKED);
  const pinned = input.pins?.ndStops;
  if (pinned === undefined) return stacks;
  const made = stacks.find((stack) => Math.abs(stack.stops - pinned) < SAME_STOPS);
  return [{ stops: pinned, filters: made?.filters ?? [] }];
};

const hardestHeadEv = (question: RecipeCase): number => {
  const { input, sides, wantedEv } = question;
  const { shutterS } = fastestShutter(question);
  const ambient = ambientRatioAt(question, wantedEv);
  let hardestEv = Number.POSITIVE_INFINITY;
  for (const side of sides.all) {
    const needed = neededRatio(sides, side, ambient);
    if (needed <= 0) continue;
    hardestEv = Math.min(hardestEv, stopsFromRatio(strongestThrough(input, sides, side, shutterS) / needed));
  }
  return hardestEv;
};
