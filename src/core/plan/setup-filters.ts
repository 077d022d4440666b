import { filterStackFigures, strongestStops } from '../colour/filter-stack.ts';
import { graduatedStops } from '../colour/graduated-filter.ts';
import { ndChoices } from '../exposure/nd-choices.ts';
import { MOST_STACKED, stackRoomMm, threadFit } from '../exposure/stack-room.ts';
import type { Recipe } from '../strobe/recipe.ts';
import { ok, type Result } from '../units/result.ts';
import type { Camera, Filter, Kit, Lens } from './kit.ts';
import { missing, type KitGap } from './kit-gap.ts';
import { inOrder } from './order-key.ts';
import { framingOf } from './picture-geometry.ts';
import { headsInPicture } from './setup-light.ts';
import type { SetupQuestion } from './setup-question.ts';
import type { Setup } from './setup-schema.ts';
import type { Spot } from './shoot.ts';

export type NamedFilter = readonly [id: string, filter: Filter];

/**
 * The ND of a kit that goes before a lens, fixed and variable, in its order; a recipe names its
 * filters by their place here. A wider one fits by a step ring, a narrower one would cut the corners
 * off; one of unknown thread is taken to fit.
 */
export const ndFor = (lens: Pick<Lens, 'threadMm'>, kit: Kit): readonly NamedFilter[] =>
  inOrder(kit.filters).filter(
    ([, { kind, threadMm }]) =>
      (kind === 'nd' || kind === 'variable-nd') &&
      threadFit(threadMm, lens.threadMm) !== 'cuts-corners',
  );

/** Exactly those a setup has pinned; null where that is left to the solver. */
export function pinnedFilters(
  setup: Pick<Setup, 'pinnedFilterIds'>,
  kit: Kit,
): Result<readonly NamedFilter[] | null, KitGap> {
  if (setup.pinnedFilterIds === null) return ok(null);
  const filters: NamedFilter[] = [];
  for (const id of Object.keys(setup.pinnedFilterIds)) {
    const filter = kit.filters[id];
    if (filter === undefined) return missing('filter', id);
    filters.push([id, filter]);
  }
  return ok(filters);
}

/** How deep a stack may be before this lens at this focal length. */
export const roomBefore = (
  lens: Pick<Lens, 'minFocalLengthMm'>,
  camera: Pick<Camera, 'sensorWidthMm' | 'sensorHeightMm'>,
  focalLengthMm: number,
): number =>
  stackRoomMm({
    focalLengthMm,
    shortestMm: lens.minFocalLengthMm,
    sensorDiagonalMm: Math.hypot(camera.sensorWidthMm, camera.sensorHeightMm),
  });

type FilterQuestion = Pick<
  SetupQuestion,
  'ndStops' | 'ndStacks' | 'otherFilterStops' | 'skyFilters' | 'faceFilterStops'
> & {
  readonly pins: Pick<NonNullable<SetupQuestion['pins']>, 'ndStops' | 'ndUpToStops'>;
};

/**
 * What filters are to a recipe. Free, the solver takes ND as far as it can be stacked without
 * cutting corners. Pinned, colour filters and the even part of a polariser stand beside the ND; a
 * graduated one takes from the faces what it takes at their height, from the sky what is over that.
 */
export function filterQuestion(
  asked: { readonly setup: Setup; readonly spot: Spot; readonly kit: Kit },
  { lens, camera }: { readonly lens: Lens; readonly camera: Camera },
): Result<FilterQuestion, KitGap> {
  const { setup, spot, kit } = asked;
  const pinned = pinnedFilters(setup, kit);
  if (!pinned.ok) return pinned;
  const framing = framingOf(setup, spot);
  const owned = ndFor(lens, kit).map(([, filter]) => filter);
  const free = {
    ndStops: owned.map(({ stops }) => stops),
    ndStacks: ndChoices(
      owned.map((filter) => ({
        fromStops: filter.stops,
        toStops: strongestStops(filter),
        ringMm: filter.ringMm,
      })),
      { mostFilters: MOST_STACKED, mostMm: roomBefore(lens, camera, framing.focalLengthMm) },
    ),
  };
  if (pinned.value === null)
    return ok({ ...free, otherFilterStops: 0, skyFilters: null, faceFilterStops: 0, pins: {} });
  const {
    nd,
    otherStops,
    graduatedStops: stops,
    polarisers,
  } = filterStackFigures(pinned.value.map(([, filter]) => filter));
  const graduation = stops === 0 ? null : { stops, fraction: setup.graduationFraction };
  const heads = headsInPicture(framing, setup);
  const faceFilterStops =
    graduation === null
      ? 0
      : Math.max(
          graduatedStops(graduation, heads.left.yFraction),
          graduatedStops(graduation, heads.right.yFraction),
        );
  return ok({
    ...free,
    otherFilterStops: otherStops + faceFilterStops,
    faceFilterStops,
    skyFilters:
      graduation === null && polarisers === 0 ? null : { graduation, polariser: polarisers > 0 },
    pins: {
      ndStops: nd.fromStops,
      ...(nd.toStops > nd.fromStops ? { ndUpToStops: nd.toStops } : {}),
    },
  });
}

/** What goes before the lens as it is set: a variable one with the stops it is turned to. */
export function filtersOf(
  setup: Setup,
  kit: Kit,
  recipe: Pick<Recipe, 'ndStops' | 'ndFilters'>,
): readonly NamedFilter[] {
  const lens = kit.lenses[setup.lensId];
  const pinned = pinnedFilters(setup, kit);
  const owned = lens === undefined ? [] : ndFor(lens, kit);
  const chosen =
    pinned.ok && pinned.value !== null
      ? pinned.value
      : recipe.ndFilters.flatMap((place) => {
          const named = owned[place];
          return named === undefined ? [] : [named];
        });
  let left = recipe.ndStops - filterStackFigures(chosen.map(([, filter]) => filter)).nd.fromStops;
  return chosen.map(([id, filter]): NamedFilter => {
    if (filter.kind !== 'variable-nd') return [id, filter];
    const more = Math.min(Math.max(0, left), strongestStops(filter) - filter.stops);
    left -= more;
    return [id, { ...filter, stops: filter.stops + more }];
  });
}
