import { ratioFromStops } from '../units/stops.ts';
import { cameraSpan, type CameraSpan } from './camera-span.ts';
import { filteredReferences, holdReferenceEv } from './hold-reference.ts';
import { lightSides, type LightSides } from './light-sides.ts';
import type { RecipeInput } from './recipe.ts';

/** A recipe's question with what every step of answering it needs worked out once. */
export type RecipeCase = {
  readonly input: RecipeInput;
  readonly referenceEv: number;
  /** The same as filters that part the sky let it through. */
  readonly filteredEv: number;
  /** Scene EV that the camera is to render as mid-grey. */
  readonly wantedEv: number;
  readonly span: CameraSpan;
  readonly sides: LightSides;
  /** Where the key is meant to land, stops from mid-grey; 0 without one. */
  readonly keyTargetStops: number;
};

export const recipeCase = (input: RecipeInput): RecipeCase => {
  const referenceEv = holdReferenceEv(input.hold.under, {
    patchEv: input.sky.patchEv,
    meanEv: input.sky.meanEv,
    incidentEv: input.incidentEv,
  });
  const filteredEv = holdReferenceEv(input.hold.under, filteredReferences(input));
  const sides = lightSides(input);
  return {
    input,
    referenceEv,
    filteredEv,
    wantedEv: filteredEv + input.hold.stops,
    span: cameraSpan(input),
    sides,
    keyTargetStops: input.lights[sides.key?.lights[0] ?? -1]?.stops ?? 0,
  };
};

/** Ambient on the subject as a ratio to mid-grey at a camera EV. */
export const ambientRatioAt = (question: RecipeCase, cameraEv: number): number =>
  ratioFromStops(question.input.ambientOnSubjectEv - cameraEv);

/** The fastest shutter that flash can use here, and the time by which it divides the flash. */
export const fastestShutter = (
  question: RecipeCase,
): { readonly shutterS: number; readonly flashShutterS: number } => {
  const { span } = question;
  const shutterS = ratioFromStops(span.shutter.fromStops);
  return {
    shutterS,
    flashShutterS: span.hssShutter === span.shutter ? ratioFromStops(span.hssFlashStops) : shutterS,
  };
};
