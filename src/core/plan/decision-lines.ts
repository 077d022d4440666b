import { formatEvAsSettings } from '../exposure/camera-settings.ts';
import { attemptRecipe } from '../strobe/attempt-recipe.ts';
import { clockTime } from '../units/civil-time.ts';
import { wrapDeg360 } from '../units/angle.ts';
import { fail, ok, type Result } from '../units/result.ts';
import { readingPrediction } from './reading-prediction.ts';
import { setupCase, type SetupCase, type SetupCaseInput, type SetupGap } from './setup-case.ts';
import type { SetupLight } from './setup-light.ts';
import { recipeInput } from './setup-question.ts';
import { shiftedLight } from './shifted-case.ts';
import type { ReadOf } from './site-reading.ts';
import { framesOf } from './solved-day.ts';

/** How far a reading may be off before plan B is the plan. */
export type DecisionLine = {
  readonly atMs: number;
  /** What is read: the part of the sky that the hold is counted from, or the light at the face. */
  readonly read: ReadOf;
  readonly bearingDeg: number;
  /** EV at ISO 100. */
  readonly predictedEv: number;
  readonly spreadStops: number;
  /**
   * First, middle and last frame work while a reading is no more than this over or under; null: one
   * does not work as predicted. At `FARTHEST_STOPS` it is open.
   */
  readonly brighterStops: number | null;
  readonly darkerStops: number | null;
  readonly sentence: string;
};

export type DecisionGap = SetupGap | { readonly kind: 'no-sky' | 'no-time' };

/** Farther off than this it is another sky than the one planned for. */
export const FARTHEST_STOPS = 3;
const TENTH = 0.1;
/** Before the first frame: when the stands go up, when they stand. Common practice. [lightingPractice] */
const BEFORE_MIN = [60, 30, 0] as const;
const MS_PER_MIN = 60_000;

/**
 * Lines for an hour and for half an hour before a setup's first frame and for that frame, each with
 * the prediction for its own minute and bearing. What a reading is off by then is taken to hold to
 * the last frame; sky and ambient are moved apart, so a reading of the sky leaves the ambient alone.
 */
export function decisionLines(
  asked: Omit<SetupCaseInput, 'instantMs'>,
): Result<readonly DecisionLine[], DecisionGap> {
  const setup = asked.shoot.setups[asked.setupId];
  const spot = setup && asked.shoot.spots[setup.spotId];
  if (setup === undefined || spot === undefined) return fail({ kind: 'gone' });
  const [firstMs, lastMs] = framesOf(asked.shoot, setup);
  if (firstMs === undefined || lastMs === undefined) return fail({ kind: 'no-time' });
  const frames: SetupCase[] = [];
  for (const instantMs of [firstMs, (firstMs + lastMs) / 2, lastMs]) {
    const made = setupCase({ ...asked, instantMs });
    if (!made.ok) return made;
    frames.push(made.value);
  }
  const read: ReadOf =
    setup.holdUnder === 'incident'
      ? { kind: 'incident', toward: { kind: 'camera' }, sun: 'hidden' }
      : { kind: 'sky', toward: { kind: setup.holdUnder } };
  const margin = {
    brighterStops: farthest(frames, read, 1),
    darkerStops: farthest(frames, read, -1),
  };
  const lines: DecisionLine[] = [];
  for (const minutes of BEFORE_MIN) {
    const atMs = firstMs - minutes * MS_PER_MIN;
    const made = setupCase({ ...asked, instantMs: atMs });
    if (!made.ok) return made;
    const predicted = readingPrediction(made.value, read, atMs);
    if (!predicted.ok) return fail({ kind: 'no-sky' });
    const { levelStops: predictedEv, spreadStops, bearingDeg } = predicted.value;
    const line = {
      atMs,
      read,
      bearingDeg: bearingDeg ?? wrapDeg360(made.value.scene.framing.bearingDeg),
      predictedEv,
      spreadStops,
      ...margin,
    };
    lines.push({ ...line, sentence: sentenceOf(line, spot.zone) });
  }
  return ok(lines);
}

/** In tenths of a stop, as far as every frame works on the way; null: one does not work at all. */
function farthest(frames: readonly SetupCase[], read: ReadOf, way: 1 | -1): number | null {
  let reached: number | null = null;
  for (let tenths = 0; tenths <= FARTHEST_STOPS / TENTH; tenths += 1) {
    const stops = (way * tenths) / 10;
    if (!frames.every((frame) => worksShifted(frame, read, stops))) break;
    reached = tenths / 10;
  }
  return reached;
}

function worksShifted({ light, question }: SetupCase, read: ReadOf, stops: number): boolean {
  const input = recipeInput(question, shiftedBy(light, read, stops));
  return input !== null && attemptRecipe(input).ok;
}

const shiftedBy = (light: SetupLight, read: ReadOf, stops: number): SetupLight =>
  shiftedLight(light, {
    sky: { ...light, stops: read.kind === 'sky' ? stops : 0 },
    ambient: {
      stops: read.kind === 'incident' ? stops : 0,
      spreadStops: light.daylight.spreadStops,
    },
  });

/** ‘16:00, facing 300°: predicted f/16 + 0.4 at 1/250, ISO 100; brighter by more than 0.5: plan B.’ */
function sentenceOf(line: Omit<DecisionLine, 'sentence'>, zone: string): string {
  const { atMs, bearingDeg, predictedEv, brighterStops, darkerStops } = line;
  const facing = Math.round(wrapDeg360(bearingDeg)) % 360;
  const begin = `${clockTime(atMs, zone)}, facing ${facing}°: predicted ${formatEvAsSettings(predictedEv)}`;
  if (brighterStops === null || darkerStops === null)
    return `${begin}; it does not work as predicted: plan B.`;
  const limits = [
    ...(brighterStops < FARTHEST_STOPS
      ? [`brighter by more than ${brighterStops.toFixed(1)}: plan B`]
      : []),
    ...(darkerStops < FARTHEST_STOPS
      ? [`darker by more than ${darkerStops.toFixed(1)}: plan B`]
      : []),
  ];
  return limits.length === 0
    ? `${begin}; works up to ${FARTHEST_STOPS} stops either way.`
    : `${begin}; ${limits.join('; ')}.`;
}

export type Decision =
  | { readonly kind: 'as-planned'; readonly offStops: number }
  | { readonly kind: 'plan-b'; readonly offStops: number };

/** What a reading at a line's own minute and bearing says, EV at ISO 100. */
export function decide(line: DecisionLine, readEv: number): Decision {
  const offStops = readEv - line.predictedEv;
  const most = offStops > 0 ? line.brighterStops : line.darkerStops;
  const within = most !== null && Math.abs(offStops) <= most + TENTH / 2;
  return { kind: within ? 'as-planned' : 'plan-b', offStops };
}
