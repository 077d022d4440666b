import { filterStackFigures, type FilterStackFigures } from '../colour/filter-stack.ts';
import type { ColourShift } from '../colour/filtered-light.ts';
import { GRADUATION_HEIGHT, graduatedStops } from '../colour/graduated-filter.ts';
import { threadFit, type ThreadFit } from '../exposure/stack-room.ts';
import type { FilteredFrame } from '../sky/filtered-frame.ts';
import type { Filter, Kit } from './kit.ts';
import { filtersOf, pinnedFilters, roomBefore, type NamedFilter } from './setup-filters.ts';
import { headsInPicture } from './setup-light.ts';
import type { SetupView } from './setup-view.ts';

export type GraduatedOnPicture = {
  /** Above its edge. */
  readonly stops: number;
  /** Where the picture begins and ends to darken, fractions of its height above its centre. */
  readonly fromFraction: number;
  readonly toFraction: number;
  /** On the patch and on the mean of the sky in frame; null where the frame shows no sky. */
  readonly patchStops: number | null;
  readonly frameStops: number | null;
  /** On the highest face, and on the top of its head. */
  readonly faceStops: number;
  readonly crownStops: number;
};

/** The filters before the lens and all that comes of them. */
export type LensStack = {
  readonly filters: readonly NamedFilter[];
  readonly figures: FilterStackFigures;
  /** From flash and ambient alike, as it is set. */
  readonly evenStops: number;
  readonly roomMm: number;
  readonly threads: readonly {
    readonly id: string;
    readonly filter: Filter;
    readonly fit: ThreadFit;
  }[];
  readonly focus: {
    /** The face behind the stack with the heads off, EV at ISO 100. */
    readonly faceEv: number;
    readonly limitEv: number;
  };
  readonly polariser: FilteredFrame['polariser'];
  readonly graduated: GraduatedOnPicture | null;
  /** By how much the camera cannot open this stack; 0: it can. */
  readonly shutByStops: number;
};

/** From the middle of a face to the top of the hair, common practice. [lightingPractice] */
const CROWN_M = 0.15;

export function lensStack(view: SetupView, kit: Kit): LensStack | null {
  const { setup, framing, input, question, light } = view;
  const lens = kit.lenses[setup.lensId];
  const camera = kit.cameras[setup.cameraId];
  if (lens === undefined || camera === undefined) return null;
  const filters = filtersNow(view, kit);
  const figures = filterStackFigures(filters.map(([, filter]) => filter));
  const evenStops = figures.nd.fromStops + (input.otherFilterStops ?? 0);
  const problem = view.answer.ok ? null : view.answer.problem;
  return {
    filters,
    figures,
    evenStops,
    roomMm: roomBefore(lens, camera, framing.focalLengthMm),
    threads: filters.map(([id, filter]) => ({
      id,
      filter,
      fit: threadFit(filter.threadMm, lens.threadMm),
    })),
    focus: {
      faceEv: input.ambientOnSubjectEv - evenStops,
      limitEv: camera.autofocusLimitEv,
    },
    polariser:
      question.skyFilters?.polariser === true ? (light.filteredSky?.polariser ?? null) : null,
    graduated: graduatedOnPicture(view),
    shutByStops:
      problem?.kind === 'no-setting' && problem.limit === 'too-dark' && evenStops > 0
        ? problem.shortByStops
        : 0,
  };
}

/** As the recipe sets them; without one, as pinned. */
export const filtersNow = ({ setup, answer }: SetupView, kit: Kit): readonly NamedFilter[] => {
  if (answer.ok) return filtersOf(setup, kit, answer.value.recipe);
  const pinned = pinnedFilters(setup, kit);
  return pinned.ok && pinned.value !== null ? pinned.value : [];
};

/** What the whole stack does to the colour of every light. */
export const stackShift = (filters: readonly NamedFilter[]): ColourShift => {
  const { miredShift, greenStops } = filterStackFigures(filters.map(([, filter]) => filter));
  return { miredShift, greenStops };
};

function graduatedOnPicture(view: SetupView): GraduatedOnPicture | null {
  const { question, light, setup, framing } = view;
  const graduation = question.skyFilters?.graduation ?? null;
  if (graduation === null) return null;
  const highest = (faceHeightM: number): number => {
    const { left, right } = headsInPicture(framing, { ...setup, faceHeightM });
    return Math.max(left.yFraction, right.yFraction);
  };
  const plain = light.skyInFrame;
  const behind = light.filteredSky;
  const taken = (part: 'patch' | 'frame'): number | null => {
    if (plain === null || behind === null) return null;
    const [before, after] =
      part === 'patch'
        ? [plain.patchEv, behind.reading.patchEv]
        : [plain.meanEv, behind.reading.meanEv];
    return before - after - (behind.polariser?.[part].middleStops ?? 0);
  };
  return {
    stops: graduation.stops,
    fromFraction: graduation.fraction - GRADUATION_HEIGHT / 2,
    toFraction: graduation.fraction + GRADUATION_HEIGHT / 2,
    patchStops: taken('patch'),
    frameStops: taken('frame'),
    faceStops: graduatedStops(graduation, highest(setup.faceHeightM)),
    crownStops: graduatedStops(graduation, highest(setup.faceHeightM + CROWN_M)),
  };
}
