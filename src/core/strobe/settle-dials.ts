import { stopsFromFNumber } from '../exposure/aperture-scale.ts';
import { DIAL_STEP_STOPS, dialScale } from '../exposure/dial-scale.ts';
import type { FilterStack } from '../exposure/lens-filter.ts';
import { ratioFromStops } from '../units/stops.ts';
import {
  dialCandidates,
  freeDials,
  SAME_STOPS,
  takeBest,
  type DialCandidate,
} from './dial-candidates.ts';
import type { RecipeCase } from './recipe-case.ts';
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
/** An aperture this near to the wish grants it: ISO is not raised for less. [lightingPractice] */
const WISH_GRANTED_STOPS = 0.5;

/**
 * The best combination of dial values that lands. Apertures within half a stop of the wish count
 * as granted and are ranked together, the others after them, the nearest first. Among equals: the
 * least power of the hardest-working head, then the lowest ISO, then the nearest to the wanted
 * hold and the wished aperture, then the shortest shutter and the fewest filters. One in which a
 * head stops at an end of its dial short of its exact power is taken only when there is no other.
 */
export const settleDials = (question: RecipeCase): SettledDials | null => {
  const { input, span } = question;
  const step = DIAL_STEP_STOPS[input.camera.step ?? 'third'];
  const apertures = dialScale({ ...span.aperture, stepStops: step });
  const dials = freeDials(question);
  const tried: TriedHeads = new Map();
  const wishStops =
    input.wish === undefined ? DEFAULT_APERTURE_STOPS : stopsFromFNumber(input.wish.fNumber);
  let atAnEnd: SettledDials | null = null;
  for (const group of nearestGroups(apertures, wishStops)) {
    const candidates = group.flatMap((stops) =>
      dialCandidates(question, dials, { stops, wishStops }),
    );
    const best = bestOf({ question, candidates, tried });
    if (best === null) continue;
    if (!best.heads.atAnEnd) return best;
    atAnEnd ??= best;
  }
  return atAnEnd;
};

/** Those that grant the wish together, then each of the others. */
const nearestGroups = (
  ascending: readonly number[],
  wishStops: number,
): readonly (readonly number[])[] => {
  const ordered = nearestFirst(ascending, wishStops);
  const granted = ordered.filter(
    (stops) => Math.abs(stops - wishStops) <= WISH_GRANTED_STOPS + SAME_STOPS,
  );
  return [granted, ...ordered.slice(granted.length).map((stops) => [stops])];
};

/** Heads settled so far, by camera EV and shutter: many combinations ask the same of them. */
type TriedHeads = Map<number, SettledHeads | null>;

const bestOf = (search: {
  readonly question: RecipeCase;
  readonly candidates: DialCandidate[];
  readonly tried: TriedHeads;
}): SettledDials | null => {
  const { question, candidates, tried } = search;
  let atAnEnd: SettledDials | null = null;
  for (let candidate = takeBest(candidates); candidate !== null; candidate = takeBest(candidates)) {
    const heads = headsFor(question, candidate, tried);
    if (heads === null) continue;
    const { apertureStops, stack, isoStops, shutterStops } = candidate;
    const settled = { shutterStops, apertureStops, isoStops, stack, heads };
    if (!heads.atAnEnd) return settled;
    atAnEnd ??= settled;
  }
  return atAnEnd;
};

const headsFor = (
  question: RecipeCase,
  { cameraEv, flashStops, shutterStops }: DialCandidate,
  tried: TriedHeads,
): SettledHeads | null => {
  const key = Math.round(cameraEv * 1e5) * 1e7 + Math.round(shutterStops * 1e5);
  const known = tried.get(key);
  if (known !== undefined) return known;
  const heads = settleHeads(question, {
    cameraEv,
    shutterS: ratioFromStops(shutterStops),
    flashShutterS: ratioFromStops(flashStops),
  });
  tried.set(key, heads);
  return heads;
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
