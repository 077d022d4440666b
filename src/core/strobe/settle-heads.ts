import { ratioFromStops, stopsFromRatio } from '../units/stops.ts';
import { lands } from './landing.ts';
import { passedShare, type LightSide } from './light-sides.ts';
import { ambientRatioAt, type RecipeCase } from './recipe-case.ts';
import type { RecipeInput } from './recipe.ts';

export type CameraPoint = {
  readonly cameraEv: number;
  readonly shutterS: number;
  readonly flashShutterS: number;
};

export type SettledHeads = {
  readonly powerStops: readonly number[];
  /** Each light's own flash, ratio to mid-grey. */
  readonly levels: readonly number[];
  /** Whether a dial stopped at an end although the exact power lay beyond it. */
  readonly atAnEnd: boolean;
};

/**
 * Powers of all heads at one camera setting, each rounded once to its own dial: fill first, then
 * the key on what the fill really gives, then the others. Null when a side misses its stops.
 */
export const settleHeads = (question: RecipeCase, camera: CameraPoint): SettledHeads | null => {
  const { input, sides } = question;
  const perSquared = 1 / (camera.flashShutterS * ratioFromStops(camera.cameraEv));
  const ambient = ambientRatioAt(question, camera.cameraEv);
  const powerStops = input.lights.map(() => 0);
  const levels = input.lights.map(() => 0);
  const shutter = { shutterS: camera.shutterS, syncShutterS: input.camera.syncShutterS };
  let atAnEnd = false;

  const settleSide = (side: LightSide, present: number): number => {
    let given = 0;
    let free = 0;
    for (const index of side.lights) {
      const pinned = input.pins?.powerStops?.[index] ?? null;
      const full =
        (sides.fullSquared[index] ?? 0) * perSquared * passedShare(input.lights[index], shutter);
      levels[index] = full;
      if (pinned === null) {
        free += full;
        continue;
      }
      powerStops[index] = pinned;
      levels[index] = full * ratioFromStops(pinned);
      given += levels[index] ?? 0;
    }
    for (const index of coarsestFirst(question, side)) {
      const exact = stopsFromRatio(Math.max(0, side.target - present - given) / free);
      const full = levels[index] ?? 0;
      const power = dialPower(index, exact);
      if (exact > 1e-6 || exact < (input.lights[index]?.minPowerStops ?? 0) - 1e-6) atAnEnd = true;
      powerStops[index] = power;
      levels[index] = full * ratioFromStops(power);
      given += levels[index] ?? 0;
      free -= full;
    }
    return given;
  };

  const dialPower = (index: number, exactStops: number): number => {
    const light = input.lights[index];
    if (light === undefined) return 0;
    const dialled = Math.round(exactStops / light.stepStops) * light.stepStops;
    const tidy = Math.round(dialled * 1e6) / 1e6;
    return Math.min(0, Math.max(light.minPowerStops, tidy)) + 0;
  };

  let onAxis = 0;
  for (const side of sides.all) {
    const onItsSide = side.role === 'key' || side.role === 'fill' ? ambient + onAxis : 0;
    const given = settleSide(side, onItsSide);
    if (side.role === 'fill') onAxis = given;
    if (!lands(stopsFromRatio((given + onItsSide) / side.target))) return null;
  }
  return { powerStops, levels, atAnEnd };
};

/** The lights of a side whose power is free; the finest dial takes what rounding the others leaves. */
const coarsestFirst = ({ input }: RecipeCase, side: LightSide): readonly number[] => {
  const free = side.lights.filter((index) => (input.pins?.powerStops?.[index] ?? null) === null);
  return free.length < 2
    ? free
    : free.toSorted((first, second) => stepOf(input, second) - stepOf(input, first));
};

const stepOf = (input: RecipeInput, index: number): number => input.lights[index]?.stepStops ?? 0;
