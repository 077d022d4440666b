import { stopsFromFNumber } from '../exposure/aperture-scale.ts';
import { DIAL_STEP_STOPS, dialScale } from '../exposure/dial-scale.ts';
import { stopsFromIso } from '../exposure/iso-scale.ts';
import { stopsFromShutter } from '../exposure/shutter-scale.ts';
import { freeDials } from '../strobe/dial-candidates.ts';
import { recipeCase } from '../strobe/recipe-case.ts';
import type { Recipe, RecipeInput } from '../strobe/recipe.ts';

export type LadderDial = 'nd' | 'aperture' | 'shutter' | 'iso';

/**
 * In which order the dials follow a falling sky; a rising one takes them back to front. Aperture
 * first is the twilight ladder (E7), shutter first floats the shutter under a flash that stays as
 * it is (E6, E8). [practitionerPages]
 */
export const STOP_ORDERS = {
  'aperture-first': ['nd', 'aperture', 'shutter', 'iso'],
  'shutter-first': ['shutter', 'nd', 'aperture', 'iso'],
} as const satisfies Record<string, readonly LadderDial[]>;

export type StopOrder = keyof typeof STOP_ORDERS;

export const DEFAULT_STOP_ORDER: StopOrder = 'aperture-first';

/** Where the four dials stand, stops of their own scale. */
export type DialStops = Readonly<Record<LadderDial, number>>;

/** What each dial can be set to; one value: nothing to turn. */
export type DialValues = Readonly<Record<LadderDial, readonly number[]>>;

export const dialStopsOf = (
  recipe: Pick<Recipe, 'ndStops' | 'fNumber' | 'shutterS' | 'iso'>,
): DialStops => ({
  nd: recipe.ndStops,
  aperture: stopsFromFNumber(recipe.fNumber),
  shutter: stopsFromShutter(recipe.shutterS),
  iso: stopsFromIso(recipe.iso),
});

export function dialValues(input: RecipeInput): DialValues {
  const question = recipeCase(input);
  const dials = freeDials(question);
  const stepStops = DIAL_STEP_STOPS[input.camera.step ?? 'third'];
  return {
    nd: dials.stacks.map(({ stops }) => stops),
    aperture: dialScale({ ...question.span.aperture, stepStops }),
    shutter: dials.shutters,
    iso: dials.isos,
  };
}

/** A larger value of these two lets more light in, of the others less. */
const OPENS = { nd: -1, aperture: -1, shutter: 1, iso: 1 } as const satisfies Record<
  LadderDial,
  number
>;

/** Dials that a head has to follow by as much; the shutter leaves a flash as it is. */
export const followedByHeads = (dial: LadderDial): boolean => dial !== 'shutter';

/** A nominal end of a dial, 1/250 or f/2.8, lies off its series by less than this. [iso517] [iso516] */
const OVER_STOPS = 0.1;
const SAME_STOPS = 1e-6;

export type Rung = {
  readonly dials: DialStops;
  /** Dials that were turned, in their order. */
  readonly turned: readonly LadderDial[];
  /** Dials before the last one turned that could give no more. */
  readonly spent: readonly LadderDial[];
  /** What no dial could take; about 0 where there was room. */
  readonly leftStops: number;
};

/**
 * The dials opened by so many stops from where they stand (negative closes them), each as far as
 * it goes before the next one is touched. The heads follow no more than `headsFollowStops`.
 */
export function rung(from: {
  readonly start: DialStops;
  readonly values: DialValues;
  readonly order: StopOrder;
  readonly openStops: number;
  readonly headsFollowStops: number;
}): Rung {
  const { start, values, openStops } = from;
  const way = openStops < 0 ? -1 : 1;
  const order = STOP_ORDERS[from.order];
  const dials: Record<LadderDial, number> = { ...start };
  const turned: LadderDial[] = [];
  const passedOver: LadderDial[] = [];
  const spent: LadderDial[] = [];
  let left = Math.abs(openStops);
  let follow = from.headsFollowStops;
  for (const dial of way < 0 ? order.toReversed() : order) {
    if (left <= OVER_STOPS) break;
    const room = followedByHeads(dial) ? Math.min(left, follow) : left;
    const given = (value: number): number => way * OPENS[dial] * (value - start[dial]);
    const most = values[dial].reduce(
      (best, value) =>
        given(value) <= room + OVER_STOPS && given(value) > given(best) + SAME_STOPS ? value : best,
      start[dial],
    );
    const taken = given(most);
    if (taken > SAME_STOPS) {
      dials[dial] = most;
      turned.push(dial);
      spent.push(...passedOver.splice(0));
      left -= taken;
      if (followedByHeads(dial)) follow -= taken;
    }
    if (!values[dial].some((value) => given(value) > taken + OVER_STOPS)) passedOver.push(dial);
  }
  return { dials, turned, spent, leftStops: way * left };
}
