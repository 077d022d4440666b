import type { Fix } from '../strobe/recipe.ts';
import { inOrder } from './order-key.ts';
import type { SetupCase, SetupCaseInput } from './setup-case.ts';
import type { SetupChange } from './setup-fix.ts';

/**
 * What a fix of the recipe's figures means for the setup and its kit: none when the user has
 * pinned what it would change, several when more than one thing owned would do.
 */
export function recipeFixChanges(
  { kit }: SetupCaseInput,
  base: SetupCase,
  fix: Fix,
): readonly SetupChange[] {
  const { setup } = base;
  const sources = (fix.lights ?? []).flatMap((place) => base.sources[place] ?? []);
  const first = sources[0];
  switch (fix.kind) {
    case 'distance': {
      if (first === undefined || sources.some(({ light }) => light.distancePinned)) return [];
      return distancesToTry(fix.value, first).map((distanceM) => ({
        kind: 'distance',
        lightIds: sources.map(({ lightId }) => lightId),
        distanceM,
        closer: fix.value < first.light.distanceM,
      }));
    }
    case 'second-head':
      return first === undefined
        ? []
        : [
            {
              kind: 'heads',
              lightId: first.lightId,
              headCount: fix.value,
              owned:
                headsFree(base, first.light.headId, first.head.owned) >=
                fix.value - first.light.headCount,
            },
          ];
    case 'sync-shutter':
      return fasterSync(kit, base, fix.value);
    case 'hold':
      return setup.holdPinned
        ? []
        : [{ kind: 'hold', holdStops: tenth(fix.value), deeper: fix.value > setup.holdStops }];
    case 'unlit-under':
      return [{ kind: 'unlit-under', unlitUnderStops: tenth(fix.value) }];
    case 'slower-shutter':
      return setup.tripod ? [] : [{ kind: 'tripod' }];
    case 'leave-out':
      return [{ kind: 'leave-out', lightIds: sources.map(({ lightId }) => lightId) }];
    case 'nd':
      return [{ kind: 'nd', stops: tenth(fix.value) }];
    case 'head-nd':
      return [
        {
          kind: 'head-nd',
          lightIds: sources.map(({ lightId }) => lightId),
          stops: tenth(fix.value),
        },
      ];
    case 'unpin-shutter':
      return [unpin('shutter', fix.value)];
    case 'unpin-aperture':
      return [unpin('aperture', fix.value)];
    case 'unpin-iso':
      return [unpin('iso', fix.value)];
    case 'unpin-nd':
      return [unpin('filters', fix.value)];
    case 'unpin-power':
      return [
        unpin(
          'power',
          fix.value,
          sources.map(({ lightId }) => lightId),
        ),
      ];
    case 'shade':
    case 'pair':
      return [];
  }
}

const hundredth = (distanceM: number): number => Math.round(distanceM * 100) / 100;

const STEPS_TO_TRY = 4;

/**
 * One distance; from a lit surface, whose light falls off a little otherwise than the disc that
 * stands for it, a few steps to either side of it, the one that moves it least first.
 */
function distancesToTry(value: number, { light }: SetupCase['sources'][number]): readonly number[] {
  if (light.bounce === null) return [hundredth(value)];
  const stepM = (value < 0.75 ? 0.01 : 0.05) * (value < light.distanceM ? -1 : 1);
  return Array.from({ length: 2 * STEPS_TO_TRY + 1 }, (_, step) =>
    hundredth(value + (step - STEPS_TO_TRY) * stepM),
  ).filter((distanceM) => distanceM >= NEAREST_M && distanceM < FARTHEST_M);
}

/** What a light's distance may be. */
const NEAREST_M = 0.2;
const FARTHEST_M = 30;

const tenth = (stops: number): number => Math.round(stops * 10) / 10;

const unpin = (
  pin: Extract<SetupChange, { kind: 'unpin' }>['pin'],
  costsStops: number,
  lightIds: readonly string[] = [],
): SetupChange => ({ kind: 'unpin', pin, lightIds, costsStops });

/** How many of a head the car holds beyond those the setup uses. */
export const headsFree = (
  base: Pick<SetupCase, 'sources'>,
  headId: string,
  owned: number,
): number =>
  owned -
  base.sources.reduce(
    (used, { light }) => used + (light.headId === headId ? light.headCount : 0),
    0,
  );

const SAME_SHUTTER = 1.02;

/** Cameras and leaf-shutter lenses of the kit that sync so fast, else the speed alone. */
function fasterSync(
  kit: SetupCaseInput['kit'],
  { setup, framing }: SetupCase,
  shutterS: number,
): readonly SetupChange[] {
  const enough = (syncShutterS: number): boolean => syncShutterS <= shutterS * SAME_SHUTTER;
  const cameras = inOrder(kit.cameras)
    .filter(([id, { syncShutterS }]) => id !== setup.cameraId && enough(syncShutterS))
    .map(([cameraId, { syncShutterS }]): SetupChange => ({
      kind: 'camera',
      cameraId,
      syncShutterS,
    }));
  const lenses = inOrder(kit.lenses).flatMap(([lensId, lens]): SetupChange[] =>
    lens.leafShutterS !== null &&
    enough(lens.leafShutterS) &&
    lens.minFocalLengthMm <= framing.focalLengthMm &&
    lens.maxFocalLengthMm >= framing.focalLengthMm
      ? [{ kind: 'lens', lensId, syncShutterS: lens.leafShutterS }]
      : [],
  );
  const owned = [...cameras, ...lenses];
  return owned.length > 0 ? owned : [{ kind: 'sync-shutter', shutterS }];
}
