import { slowestShutterS } from '../exposure/motion-blur.ts';
import type { RecipeLight } from '../strobe/recipe.ts';
import { ok, type Result } from '../units/result.ts';
import type { Camera, Head, Kit, Lens } from './kit.ts';
import { missing, type KitGap } from './kit-gap.ts';
import { nearestDistanceM } from './nearest-distance.ts';
import { inOrder } from './order-key.ts';
import { framingOf } from './picture-geometry.ts';
import { filterQuestion } from './setup-filters.ts';
import type { SetupQuestion } from './setup-question.ts';
import type { Setup } from './setup-schema.ts';
import { setupSource, type SetupSource } from './setup-source.ts';
import type { Spot } from './shoot.ts';

export function setupSources(
  setup: Setup,
  spot: Spot,
  kit: Kit,
): Result<readonly SetupSource[], KitGap> {
  const sources: SetupSource[] = [];
  for (const [lightId, light] of inOrder(setup.lights)) {
    const head = kit.heads[light.headId];
    if (head === undefined) return missing('head', light.headId);
    const modifier = kit.modifiers[light.modifierId];
    if (modifier === undefined) return missing('modifier', light.modifierId);
    const gel = light.gelId === null ? null : kit.gels[light.gelId];
    if (gel === undefined) return missing('gel', light.gelId ?? '');
    const secondGel = light.secondGelId === null ? null : kit.gels[light.secondGelId];
    if (secondGel === undefined) return missing('gel', light.secondGelId ?? '');
    sources.push(setupSource({ lightId, light, head, modifier, gel, secondGel }, kit, setup));
  }
  return ok(sources);
}

/** The sources may be handed in where they are known. */
export function setupQuestion(
  setup: Setup,
  spot: Spot,
  kit: Kit,
  known?: readonly SetupSource[],
): Result<SetupQuestion, KitGap> {
  const camera = kit.cameras[setup.cameraId];
  if (camera === undefined) return missing('camera', setup.cameraId);
  const lens = kit.lenses[setup.lensId];
  if (lens === undefined) return missing('lens', setup.lensId);
  const sources = known === undefined ? setupSources(setup, spot, kit) : ok(known);
  if (!sources.ok) return sources;
  const filters = filterQuestion({ setup, spot, kit }, { lens, camera });
  if (!filters.ok) return filters;
  const framing = framingOf(setup, spot);
  return ok({
    ...filters.value,
    shaded: setup.shaded,
    hold: { stops: setup.holdStops, under: setup.holdUnder },
    unlitUnderStops: setup.unlitUnderStops,
    lights: sources.value.map((source) => recipeLight(source, setup, spot)),
    camera: recipeCamera(setup, camera, lens, sources.value, framing.focalLengthMm),
    lens: { minFNumber: lens.minFNumber, maxFNumber: lens.maxFNumber },
    wish: { fNumber: setup.wishFNumber },
    pins: {
      ...(setup.pinnedShutterS === null ? {} : { shutterS: setup.pinnedShutterS }),
      ...(setup.pinnedFNumber === null ? {} : { fNumber: setup.pinnedFNumber }),
      ...(setup.pinnedIso === null ? {} : { iso: setup.pinnedIso }),
      ...filters.value.pins,
      powerStops: sources.value.map(({ light }) => light.pinnedPowerStops),
    },
  });
}

const recipeLight = (source: SetupSource, setup: Setup, spot: Spot): RecipeLight => {
  const { light, head, output } = source;
  return {
    // A cross light stands alone on its edge, as a rim does.
    role: light.role === 'cross' ? 'rim' : light.role,
    stops: light.stops,
    guideNumberM: output.guideNumberM,
    lossStops: output.lossStops,
    distanceM: light.distanceM,
    sourceDiameterM: output.sourceDiameterM,
    heads: light.headCount,
    minPowerStops: head.minPowerStops,
    stepStops: head.stepStops,
    ...flashDurations(head),
    minDistanceM: nearestDistanceM(source.stand, setup, framingOf(setup, spot)),
    ...(source.path === null ? {} : { path: source.path }),
  };
};

/** The lengths of a head's flash that are known. */
export const flashDurations = (
  head: Pick<Head, 'flashDurationS' | 'flashDurationLowestS'>,
): Pick<RecipeLight, 'flashDurationS' | 'flashDurationLowestS'> => ({
  ...(head.flashDurationS === null ? {} : { flashDurationS: head.flashDurationS }),
  ...(head.flashDurationLowestS === null
    ? {}
    : { flashDurationLowestS: head.flashDurationLowestS }),
});

function recipeCamera(
  setup: Setup,
  camera: Camera,
  lens: Lens,
  sources: readonly SetupSource[],
  focalLengthMm: number,
): SetupQuestion['camera'] {
  const syncShutterS = lens.leafShutterS ?? camera.syncShutterS;
  const movementS = slowestShutterS({
    motion: setup.motion,
    support: setup.tripod ? 'tripod' : 'hand',
    focalLengthMm,
    sensorDiagonalMm: Math.hypot(camera.sensorWidthMm, camera.sensorHeightMm),
  });
  const losses = sources.map(({ head }) => head.hssLossStops);
  const allHaveHss = losses.length > 0 && losses.every((loss) => loss !== null);
  return {
    syncShutterS,
    slowestShutterS: Math.max(syncShutterS, Math.min(movementS, camera.slowestShutterS)),
    baseIso: camera.baseIso,
    maxIso: camera.maxIso,
    step: camera.step,
    ...(allHaveHss && lens.leafShutterS === null
      ? {
          fastestShutterS: camera.fastestShutterS,
          hssLossStops: Math.max(...losses.map((loss) => loss ?? 0)),
        }
      : {}),
  };
}
