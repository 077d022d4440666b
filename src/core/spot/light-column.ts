import { civilDateOf, type DayBounds, dayBoundsMs, dayOfYear } from '../units/civil-time.ts';
import { type SpotLight, type SpotScene, spotLight } from './spot-light.ts';

export type LightColumnInput = SpotScene & {
  /** IANA time zone of the spot. */
  readonly zone: string;
  /** 'YYYY-MM-DD' in that zone. */
  readonly date: string;
  readonly stepMin: number;
  /** Of the column, in place of the date's own. */
  readonly startMs?: number | undefined;
  readonly endMs?: number | undefined;
};

/**
 * The light at a spot over a day, step by step from the start to before the end: what `lightAt`
 * gives, side by side. NaN where the frame shows no sky. Empty for what is no date or zone.
 */
export type LightColumn = {
  readonly instantMs: Float64Array;
  readonly sunAzimuthDeg: Float64Array;
  readonly sunTrueAltitudeDeg: Float64Array;
  readonly sunApparentAltitudeDeg: Float64Array;
  /** Share of the sun's disc above the skyline. */
  readonly discShare: Float64Array;
  readonly minEv: Float64Array;
  readonly darkEv: Float64Array;
  readonly meanEv: Float64Array;
  readonly brightEv: Float64Array;
  readonly maxEv: Float64Array;
  readonly patchEv: Float64Array;
  readonly skyShare: Float64Array;
  /** 1 while the sun stands in the frame. */
  readonly sunInFrame: Uint8Array;
  readonly frameSpreadStops: Float64Array;
  readonly patchSpreadStops: Float64Array;
  readonly ambientHiddenEv: Float64Array;
  readonly ambientOutEv: Float64Array;
  readonly ambientShadedEv: Float64Array;
  readonly incidentEv: Float64Array;
  /** ± stops round ambient and incident. */
  readonly ambientSpreadStops: Float64Array;
};

export const lightColumn = (input: LightColumnInput): LightColumn => {
  const day = dayBoundsMs(input.date, input.zone);
  const dayOfYearAt = daysOfYear(input, day);
  const light = spotLight(input);
  const instants = stepsMs(input, day);
  const column = emptyLightColumn(instants);
  instants.forEach((instantMs, at) => {
    enterLight(column, at, light({ instantMs, dayOfYear: dayOfYearAt(instantMs) }));
  });
  return column;
};

const MS_PER_MIN = 60_000;

const stepsMs = (input: LightColumnInput, day: DayBounds): Float64Array => {
  const startMs = input.startMs ?? day.startMs;
  const endMs = input.endMs ?? day.endMs;
  const stepMs = input.stepMin * MS_PER_MIN;
  const count = Math.ceil((endMs - startMs) / stepMs);
  return stepMs > 0 && count > 0
    ? Float64Array.from({ length: count }, (_, step) => startMs + step * stepMs)
    : new Float64Array(0);
};

/** The date is looked up in the calendar once, and only for steps outside it again. */
const daysOfYear = (
  { date, zone }: LightColumnInput,
  { startMs, endMs }: DayBounds,
): ((instantMs: number) => number) => {
  const ofDate = dayOfYear(date);
  return (instantMs) =>
    instantMs >= startMs && instantMs < endMs ? ofDate : dayOfYear(civilDateOf(instantMs, zone));
};

export const emptyLightColumn = (instantMs: Float64Array): LightColumn => {
  const numbers = (): Float64Array => new Float64Array(instantMs.length).fill(NaN);
  return {
    instantMs,
    sunAzimuthDeg: numbers(),
    sunTrueAltitudeDeg: numbers(),
    sunApparentAltitudeDeg: numbers(),
    discShare: numbers(),
    minEv: numbers(),
    darkEv: numbers(),
    meanEv: numbers(),
    brightEv: numbers(),
    maxEv: numbers(),
    patchEv: numbers(),
    skyShare: new Float64Array(instantMs.length),
    sunInFrame: new Uint8Array(instantMs.length),
    frameSpreadStops: numbers(),
    patchSpreadStops: numbers(),
    ambientHiddenEv: numbers(),
    ambientOutEv: numbers(),
    ambientShadedEv: numbers(),
    incidentEv: numbers(),
    ambientSpreadStops: numbers(),
  };
};

/** Enters what one step gives. */
export const enterLight = (column: LightColumn, at: number, light: SpotLight): void => {
  column.sunAzimuthDeg[at] = light.sun.azimuthDeg;
  column.sunTrueAltitudeDeg[at] = light.sun.trueAltitudeDeg;
  column.sunApparentAltitudeDeg[at] = light.sun.apparentAltitudeDeg;
  column.discShare[at] = light.subject.discShare;
  column.frameSpreadStops[at] = light.frameSpreadStops;
  column.patchSpreadStops[at] = light.patchSpreadStops;
  column.ambientHiddenEv[at] = light.ambientHiddenEv;
  column.ambientOutEv[at] = light.ambientOutEv;
  column.ambientShadedEv[at] = light.ambientShadedEv;
  column.incidentEv[at] = light.incidentEv;
  column.ambientSpreadStops[at] = light.daylight.spreadStops;
  const sky = light.skyInFrame;
  if (sky === null) return;
  column.minEv[at] = sky.minEv;
  column.darkEv[at] = sky.darkEv;
  column.meanEv[at] = sky.meanEv;
  column.brightEv[at] = sky.brightEv;
  column.maxEv[at] = sky.maxEv;
  column.patchEv[at] = sky.patchEv;
  column.skyShare[at] = sky.skyShare;
  column.sunInFrame[at] = sky.sunInFrame ? 1 : 0;
};
