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
    const set = (index: number, power: number): void => {
      const level = levelAt(index, power);
      powerStops[index] = power;
      levels[index] = level;
      given += level;
    };
    for (const index of side.lights) {
      const pinned = input.pins?.powerStops?.[index] ?? null;
      if (pinned !== null) set(index, pinned);
    }
    const free = coarsestFirst(question, side);
    free.forEach((index, place) => {
      const needed = Math.max(0, side.target - present - given);
      const exact = evenPower(place === 0 ? free : free.slice(place), needed);
      if (exact > 1e-6 || exact < (input.lights[index]?.minPowerStops ?? 0) - 1e-6) atAnEnd = true;
      set(index, dialPower(index, exact));
    });
    return given;
  };

  /** What a light gives at a power, the shutter having cut its flash. */
  const levelAt = (index: number, power: number): number =>
    (sides.fullSquared[index] ?? 0) *
    perSquared *
    ratioFromStops(power) *
    passedShare(input.lights[index], shutter, power);

  /** The one power at which lights give a level together. */
  const evenPower = (lights: readonly number[], needed: number): number => {
    const overStops = (power: number): number => {
      let sum = 0;
      for (const index of lights) sum += levelAt(index, power);
      return stopsFromRatio(sum / needed);
    };
    const first = -overStops(0);
    const changesLength = lights.some(
      (index) => input.lights[index]?.flashDurationLowestS !== undefined,
    );
    return changesLength && Number.isFinite(first) ? rootNear(overStops, first) : first;
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

/** More than any dial tells apart. */
const POWER_EXACT_STOPS = 1e-7;

/** Where a function that rises about one for one passes zero, by secants from a first guess. */
function rootNear(heightAt: (at: number) => number, guess: number): number {
  let [before, heightBefore] = [0, heightAt(0)];
  let at = guess;
  for (let step = 0; step < 12 && Math.abs(at - before) > 1e-12; step += 1) {
    const height = heightAt(at);
    if (Math.abs(height) < POWER_EXACT_STOPS) break;
    const slope = Math.max(LEAST_SLOPE, (height - heightBefore) / (at - before));
    [before, heightBefore] = [at, height];
    at -= height / slope;
  }
  return at;
}

/** A tail cut off as fast as the power falls leaves the light through a fast shutter nearly as it was. */
const LEAST_SLOPE = 0.05;
