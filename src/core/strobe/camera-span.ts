import { stopsFromFNumber } from '../exposure/aperture-scale.ts';
import { isWithinDial } from '../exposure/dial-scale.ts';
import { stopsFromIso } from '../exposure/iso-scale.ts';
import { stopsFromShutter } from '../exposure/shutter-scale.ts';
import { ndStacks } from './nd-stacks.ts';
import type { RecipeInput } from './recipe.ts';
import { HSS_LOSS_STOPS, isHighSpeedSync } from './sync.ts';

type Ends = { readonly fromStops: number; readonly toStops: number };

/** What the camera, the lens and the owned filters can do once the pins stand, in stops. */
export type CameraSpan = {
  /** Shutters at or slower than sync, or the pinned one; stops against 1 s. */
  readonly shutter: Ends;
  /** Shutters faster than sync that may be used; null: none. */
  readonly hssShutter: Ends | null;
  /** log2 of the time by which high-speed sync divides a flash. */
  readonly hssFlashStops: number;
  readonly aperture: Ends;
  readonly iso: Ends;
  /** All filters on the lens together. */
  readonly filter: Ends;
  /** How far pins lie outside what exists; 0: none does. */
  readonly pinsOutsideStops: number;
};

export const cameraSpan = (input: RecipeInput): CameraSpan => {
  const { camera, lens, pins } = input;
  const syncStops = stopsFromShutter(camera.syncShutterS);
  const hssFlashStops = syncStops + (camera.hssLossStops ?? HSS_LOSS_STOPS);
  const synced: Ends = {
    fromStops: syncStops,
    toStops: Math.max(syncStops, stopsFromShutter(camera.slowestShutterS)),
  };
  const fastest: Ends | null =
    camera.fastestShutterS !== undefined && isFaster(camera.fastestShutterS, camera.syncShutterS)
      ? { fromStops: stopsFromShutter(camera.fastestShutterS), toStops: syncStops }
      : null;
  const whole: Ends = { fromStops: fastest?.fromStops ?? syncStops, toStops: synced.toStops };
  const apertureEnds: Ends = {
    fromStops: stopsFromFNumber(lens.minFNumber),
    toStops: stopsFromFNumber(lens.maxFNumber),
  };
  const isoEnds: Ends = {
    fromStops: stopsFromIso(camera.baseIso),
    toStops: stopsFromIso(camera.maxIso),
  };
  const pinnedShutter =
    pins?.shutterS === undefined ? null : point(stopsFromShutter(pins.shutterS));
  const pinnedAperture = pins?.fNumber === undefined ? null : point(stopsFromFNumber(pins.fNumber));
  const pinnedIso = pins?.iso === undefined ? null : point(stopsFromIso(pins.iso));
  const pinnedHss =
    pinnedShutter !== null &&
    fastest !== null &&
    isFaster(pins?.shutterS ?? 0, camera.syncShutterS);
  return {
    shutter: pinnedShutter ?? synced,
    hssShutter: pinnedHss
      ? pinnedShutter
      : pinnedShutter === null && camera.allowHss === true
        ? fastest
        : null,
    hssFlashStops,
    aperture: pinnedAperture ?? apertureEnds,
    iso: pinnedIso ?? isoEnds,
    filter: filterEnds(input),
    pinsOutsideStops: Math.max(
      outsideStops(pinnedShutter, whole),
      outsideStops(pinnedAperture, apertureEnds),
      outsideStops(pinnedIso, isoEnds),
    ),
  };
};

const isFaster = (shutterS: number, syncShutterS: number): boolean =>
  isHighSpeedSync({ shutterS, syncShutterS });

const point = (stops: number): Ends => ({ fromStops: stops, toStops: stops });

const outsideStops = (pinned: Ends | null, ends: Ends): number => {
  if (pinned === null || isWithinDial(pinned.fromStops, ends)) return 0;
  return Math.max(ends.fromStops - pinned.fromStops, pinned.fromStops - ends.toStops);
};

/** In one go: lists of stacks may be long. */
const filterEnds = (input: RecipeInput): Ends => {
  let [fromStops, toStops] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { stops } of ndStacks(input)) {
    if (stops < fromStops) fromStops = stops;
    if (stops > toStops) toStops = stops;
  }
  const other = input.otherFilterStops ?? 0;
  return { fromStops: other + fromStops, toStops: other + toStops };
};
