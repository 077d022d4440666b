import type { FrameReading } from '../sky/frame-reading.ts';
import type { HeadFigure } from '../strobe/head.ts';
import { ratioFromStops } from '../units/stops.ts';
import { combinedShift, type CombinedShift, type ShiftWanted } from './combined-shift.ts';
import { readingPrediction } from './reading-prediction.ts';
import type { ReadingShift, ShiftOf } from './reading-shift.ts';
import type { SetupCase } from './setup-case.ts';
import type { SetupLight } from './setup-light.ts';
import { recipeInput } from './setup-question.ts';

/** A shift and the spread that then lies round the figure. */
export type AppliedShift = Pick<CombinedShift, 'stops' | 'spreadStops'>;

/**
 * Light brighter by a shift of its sky and another of what falls on the subject. EVs and the
 * subject's illuminances move; `daylight` stays the model's, but for the spread of the ambient.
 */
export function shiftedLight(
  light: SetupLight,
  shift: {
    readonly sky: {
      readonly stops: number;
      readonly frameSpreadStops: number;
      readonly patchSpreadStops: number;
    };
    readonly ambient: AppliedShift;
  },
): SetupLight {
  const { sky, ambient } = shift;
  const gain = ratioFromStops(ambient.stops);
  const lit = (subject: SetupLight['subject']): SetupLight['subject'] => ({
    planeLux: subject.planeLux * gain,
    domeLux: subject.domeLux * gain,
    groundLux: subject.groundLux * gain,
    discShare: subject.discShare,
    beamPlaneLux: subject.beamPlaneLux * gain,
    beamDomeLux: subject.beamDomeLux * gain,
  });
  const { skyInFrame, filteredSky } = light;
  return {
    ...light,
    daylight: { ...light.daylight, spreadStops: ambient.spreadStops },
    skyInFrame: skyInFrame === null ? null : brighterFrame(skyInFrame, sky.stops),
    filteredSky:
      filteredSky === null
        ? null
        : { ...filteredSky, reading: brighterFrame(filteredSky.reading, sky.stops) },
    frameSpreadStops: sky.frameSpreadStops,
    patchSpreadStops: sky.patchSpreadStops,
    subject: lit(light.subject),
    subjectSunOut: lit(light.subjectSunOut),
    ambientOnSubjectEv: light.ambientOnSubjectEv + ambient.stops,
    ambientHiddenEv: light.ambientHiddenEv + ambient.stops,
    ambientOutEv: light.ambientOutEv + ambient.stops,
    ambientShadedEv: light.ambientShadedEv + ambient.stops,
    incidentEv: light.incidentEv + ambient.stops,
  };
}

const brighterFrame = (reading: FrameReading, stops: number): FrameReading => ({
  ...reading,
  minEv: reading.minEv + stops,
  darkEv: reading.darkEv + stops,
  meanEv: reading.meanEv + stops,
  brightEv: reading.brightEv + stops,
  maxEv: reading.maxEv + stops,
  patchEv: reading.patchEv + stops,
});

/** The same light with everything that comes from the sky so much brighter, its spreads as they were. */
export const brighterLight = (light: SetupLight, stops: number): SetupLight =>
  shiftedLight(light, {
    sky: { ...light, stops },
    ambient: { stops, spreadStops: light.daylight.spreadStops },
  });

/** A head that gives more or less than was thought: light goes with the guide number squared. [iso1230] */
export const shiftedHead = (figure: HeadFigure, shift: AppliedShift): HeadFigure => ({
  ...figure,
  guideNumberM: figure.guideNumberM * Math.sqrt(ratioFromStops(shift.stops)),
  spreadStops: shift.spreadStops,
});

/** A case's shifts at its minute, each as it is applied. */
export type CaseShifts = {
  readonly sky: CombinedShift;
  readonly ambient: CombinedShift;
  /** By place in `sources`. */
  readonly heads: readonly CombinedShift[];
};

/** What past shoots were off by, where they say something. */
export type FadeTo = { readonly skyStops: number; readonly ambientStops: number };
export const FADE_TO_MODEL: FadeTo = { skyStops: 0, ambientStops: 0 };

/** The setup at its minute with everything that was read taken into account. */
export function shiftedCase(
  base: SetupCase,
  shifts: readonly ReadingShift[],
  at: { readonly instantMs: number; readonly fadeTo: FadeTo },
): { readonly case: SetupCase; readonly shifts: CaseShifts } {
  const { light, scene } = base;
  const patch = readingPrediction(base, { kind: 'sky', toward: { kind: 'patch' } }, at.instantMs);
  const wanted = (
    of: ShiftOf,
    modelSpreadStops: number,
    more: Pick<ShiftWanted, 'bearingDeg' | 'towardsStops'>,
  ): CombinedShift =>
    combinedShift(shifts, {
      of,
      instantMs: at.instantMs,
      condition: scene.condition,
      modelSpreadStops,
      ...more,
    });
  const sky = (modelSpreadStops: number): CombinedShift =>
    wanted({ kind: 'sky' }, modelSpreadStops, {
      bearingDeg: patch.ok ? patch.value.bearingDeg : scene.framing.bearingDeg,
      towardsStops: at.fadeTo.skyStops,
    });
  const ofPatch = sky(light.patchSpreadStops);
  const ofAmbient = wanted({ kind: 'ambient' }, light.daylight.spreadStops, {
    bearingDeg: scene.framing.bearingDeg,
    towardsStops: at.fadeTo.ambientStops,
  });
  const heads = base.sources.map(({ light: { headId, modifierId }, output }) =>
    wanted({ kind: 'head', headId, modifierId }, output.spreadStops, {
      bearingDeg: null,
      towardsStops: 0,
    }),
  );
  const sources = base.sources.map((source, place) => {
    const shift = heads[place];
    return shift === undefined ? source : { ...source, output: shiftedHead(source.output, shift) };
  });
  const question = {
    ...base.question,
    lights: base.question.lights.map((one, place) => ({
      ...one,
      guideNumberM: sources[place]?.output.guideNumberM ?? one.guideNumberM,
    })),
  };
  const now = shiftedLight(light, {
    sky: {
      stops: ofPatch.stops,
      patchSpreadStops: ofPatch.spreadStops,
      frameSpreadStops: sky(light.frameSpreadStops).spreadStops,
    },
    ambient: ofAmbient,
  });
  return {
    case: { ...base, sources, question, light: now, input: recipeInput(question, now) },
    shifts: { sky: ofPatch, ambient: ofAmbient, heads },
  };
}
