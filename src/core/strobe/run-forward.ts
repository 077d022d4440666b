import {
  FLAT_RECEPTOR_C,
  luminanceFromEv100,
  REFLECTED_LIGHT_K,
} from '../exposure/exposure-value.ts';
import { perSquareM } from './light-on-subject.ts';
import type { LightRole, Recipe, RecipeInput, RecipeLight } from './recipe.ts';

/** Where a setting puts everything, stops from mid-grey; −Infinity where there is no light. */
export type Landing = {
  readonly patchStops: number;
  readonly frameStops: number;
  readonly incidentStops: number;
  readonly unlitStops: number;
  readonly unlitOutStops: number;
  readonly lights: readonly {
    readonly role: LightRole;
    readonly flashLuxS: number;
    /** Its own flash alone. */
    readonly flashStops: number;
    /** The face it is meant for, with everything else that reaches that face. */
    readonly faceStops: number;
  }[];
};

/** Illuminance in lx that reads an EV at ISO 100 on a flat receptor, E = 2^EV C/100. [iso2720] */
const illuminanceFromEv100 = (ev100: number): number => (2 ** ev100 * FLAT_RECEPTOR_C) / 100;

/**
 * From the settings of a recipe to where sky and faces land, in luminance (N²/t = L S/K) and in
 * luminous exposure (N² = H S/C), H = I_s/d² with I_s = GN² C/100 candela seconds at full power:
 * by quantities of light, independently of the algebra in stops that made the recipe.
 * [iso2720] [iso1230] [iso2827]
 */
export const runForward = (
  input: RecipeInput,
  settings: Pick<Recipe, 'shutterS' | 'fNumber' | 'iso' | 'ndStops' | 'lights'>,
): Landing => {
  const { shutterS, fNumber, iso } = settings;
  const transmittance = 10 ** (-(settings.ndStops + (input.otherFilterStops ?? 0)) * Math.log10(2));
  const luminanceStops = (luminanceCdM2: number): number =>
    Math.log2(
      (luminanceCdM2 * transmittance * iso * shutterS) / (REFLECTED_LIGHT_K * fNumber ** 2),
    );
  const exposureStops = (luxS: number): number =>
    Math.log2((luxS * transmittance * iso) / (FLAT_RECEPTOR_C * fNumber ** 2));
  const ambientLuxS = (ev100: number): number => illuminanceFromEv100(ev100) * shutterS;

  const sky = input.skyFilterStops ?? { patch: 0, frame: 0 };
  /** A part of the sky behind what is before it alone, as the share of its light that is left. */
  const skyStops = (ev100: number, takenStops: number): number =>
    luminanceStops(luminanceFromEv100(ev100) * 10 ** (-takenStops * Math.log10(2)));
  const frameStops = skyStops(input.sky.meanEv, sky.frame);

  const ambient = ambientLuxS(input.ambientOnSubjectEv);
  const flashes = input.lights.map((light, index) =>
    flashLuxS(light, settings.lights[index]?.powerStops ?? Number.NaN, shutterS, input.camera),
  );
  const flashOf = (role: LightRole): number =>
    flashes.reduce((sum, luxS, index) => sum + (input.lights[index]?.role === role ? luxS : 0), 0);
  const fillFace = flashOf('fill') + ambient;
  const keyFace = flashOf('key') + fillFace;
  const faceLuxS = (role: LightRole, ownLuxS: number): number =>
    role === 'key' ? keyFace : role === 'fill' ? fillFace : ownLuxS;

  return {
    patchStops: input.sky.patchEv === null ? frameStops : skyStops(input.sky.patchEv, sky.patch),
    frameStops,
    incidentStops: exposureStops(ambientLuxS(input.incidentEv)),
    unlitStops: exposureStops(ambient),
    unlitOutStops: exposureStops(ambientLuxS(input.ambientOutEv ?? input.ambientOnSubjectEv)),
    lights: input.lights.map(({ role }, index) => {
      const luxS = flashes[index] ?? 0;
      return {
        role,
        flashLuxS: luxS,
        flashStops: exposureStops(luxS),
        faceStops: exposureStops(faceLuxS(role, luxS)),
      };
    }),
  };
};

/** 1/512 s is what a camera does that states a sync of 1/500: up to a tenth shorter is the same name. [iso516] */
const SAME_NAME = 1.11;

/** Luminous exposure on the subject that the open shutter takes of one light, lx s. */
const flashLuxS = (
  light: RecipeLight,
  powerStops: number,
  shutterS: number,
  camera: RecipeInput['camera'],
): number => {
  const candelaSeconds = (light.guideNumberM ** 2 * FLAT_RECEPTOR_C) / 100;
  // What the path costs is found again, from where head, surface and subject stand.
  const lossStops = light.lossStops - (light.path?.lossStops ?? 0);
  const emitted =
    (light.heads ?? 1) *
    candelaSeconds *
    10 ** ((powerStops - lossStops) * Math.log10(2)) *
    perSquareM(light.path, {
      distanceM: light.distanceM,
      radiusM: (light.sourceDiameterM ?? 0) / 2,
    });
  const overSync = camera.syncShutterS / shutterS;
  if (overSync > SAME_NAME) return emitted / overSync / 2 ** (camera.hssLossStops ?? 2);
  const totalS = totalDurationS(light, powerStops);
  return totalS > 0 ? emitted * (1 - Math.exp((-shutterS * Math.LN10) / totalS)) : emitted;
};

/** t0.1 at a power: the geometric mean of both ends, weighted by how far down from full it is. [iso2827] */
const totalDurationS = (light: RecipeLight, powerStops: number): number => {
  const atFullS = light.flashDurationS ?? 0;
  const atLowestS = light.flashDurationLowestS ?? atFullS;
  if (atFullS === 0 || light.minPowerStops === 0) return atFullS;
  const lowered = powerStops / light.minPowerStops;
  return Math.exp((1 - lowered) * Math.log(atFullS) + lowered * Math.log(atLowestS));
};
