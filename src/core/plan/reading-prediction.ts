import { MOONLIGHT_BELOW_DEG } from '../daylight/daylight-at.ts';
import { SKY_CONDITION_TRAITS } from '../daylight/sky-condition.ts';
import { frameSpreadStops } from '../daylight/spread.ts';
import { ev100FromDomeIlluminance, ev100FromLuminance } from '../exposure/exposure-value.ts';
import { conditionSky, type Sky } from '../sky/condition-sky.ts';
import { projection } from '../sky/framing.ts';
import { skylineAltitude } from '../skyline/skyline.ts';
import { flashFNumberSquared } from '../strobe/guide-number.ts';
import { subjectIlluminance } from '../subject/subject-illuminance.ts';
import { moonPosition } from '../sun-moon/moon-position.ts';
import { wrapDeg360 } from '../units/angle.ts';
import { civilDateOf, dayOfYear } from '../units/civil-time.ts';
import { angleBetweenDeg } from '../units/direction.ts';
import { fail, ok, type Result } from '../units/result.ts';
import type { SetupCase } from './setup-case.ts';
import type { ReadOf } from './site-reading.ts';

/** What a reading should show if the model were right. */
export type ReadingPrediction = {
  /** EV at ISO 100; for a flash log2 N² at ISO 100. */
  readonly levelStops: number;
  /** ± of the model. */
  readonly spreadStops: number;
  /** Where it looks, clockwise from true north; null: nowhere in particular. */
  readonly bearingDeg: number | null;
};

type Refusal = { readonly sentence: string };

/** The prediction for a reading at the same minute and bearing. */
export function readingPrediction(
  base: SetupCase,
  of: ReadOf,
  instantMs: number,
): Result<ReadingPrediction, Refusal> {
  switch (of.kind) {
    case 'sky':
      return of.toward.kind === 'direction'
        ? towardsDirection(base, of.toward, instantMs)
        : skyInFrame(base, of.toward.kind);
    case 'incident':
      return incident(base, of, instantMs);
    case 'flash':
      return flash(base, of);
  }
}

function skyInFrame(
  { light, scene }: SetupCase,
  part: 'patch' | 'frame',
): Result<ReadingPrediction, Refusal> {
  const { skyInFrame: seen, patch } = light;
  if (seen === null) return fail({ sentence: 'No sky stands in this frame.' });
  if (part === 'frame' || patch === null || seen.patchIsFrame)
    return ok({
      levelStops: seen.meanEv,
      spreadStops: light.frameSpreadStops,
      bearingDeg: wrapDeg360(scene.framing.bearingDeg),
    });
  return ok({
    levelStops: seen.patchEv,
    spreadStops: light.patchSpreadStops,
    bearingDeg: projection(scene.framing).toDirection(patch).azimuthDeg,
  });
}

/** The sky of a scene at a minute, over every direction. */
function skyAt({ scene, light }: SetupCase, instantMs: number): Sky {
  const { sun } = light;
  return conditionSky({
    sun,
    condition: scene.condition,
    dayOfYear: dayOfYear(civilDateOf(instantMs, scene.zone)),
    elevationM: scene.place.elevationM ?? 0,
    moon:
      sun.trueAltitudeDeg < MOONLIGHT_BELOW_DEG ? moonPosition(instantMs, scene.place) : undefined,
  });
}

function towardsDirection(
  base: SetupCase,
  { bearingDeg, tiltDeg }: { readonly bearingDeg: number; readonly tiltDeg: number },
  instantMs: number,
): Result<ReadingPrediction, Refusal> {
  const { scene, light } = base;
  if (!Number.isFinite(bearingDeg) || !(tiltDeg <= 90))
    return fail({
      sentence: `Expected a bearing and a tilt up to 90°, found ${bearingDeg}° and ${tiltDeg}°.`,
    });
  const edgeDeg = Math.max(0, skylineAltitude(scene.skyline)(bearingDeg));
  if (!(tiltDeg > edgeDeg))
    return fail({
      sentence: `Towards ${Math.round(wrapDeg360(bearingDeg))}° the sky begins at ${edgeDeg.toFixed(1)}°; found a tilt of ${tiltDeg}°.`,
    });
  const direction = { azimuthDeg: wrapDeg360(bearingDeg), altitudeDeg: tiltDeg };
  const { sun } = light;
  return ok({
    levelStops: ev100FromLuminance(skyAt(base, instantMs)(direction)),
    spreadStops: frameSpreadStops({
      condition: scene.condition,
      sunTrueAltitudeDeg: sun.trueAltitudeDeg,
      angleFromSunDeg: angleBetweenDeg(direction, {
        azimuthDeg: sun.azimuthDeg,
        altitudeDeg: sun.apparentAltitudeDeg,
      }),
      of: 'patch',
    }),
    bearingDeg: direction.azimuthDeg,
  });
}

/** From this on it matters whether the sun was out. */
const TWO_STATES_STOPS = 0.2;

function incident(
  base: SetupCase,
  { toward, sun }: Extract<ReadOf, { readonly kind: 'incident' }>,
  instantMs: number,
): Result<ReadingPrediction, Refusal> {
  const facingDeg = facingOf(base, toward);
  if (facingDeg === null)
    return fail({ sentence: 'The light that the dome was turned to is not in this setup.' });
  const sky = skyAt(base, instantMs);
  const levelFor = (sunIs: 'out' | 'hidden'): number =>
    ev100FromDomeIlluminance(domeLux(base, { sky, facingDeg, sunIs }));
  const [hidden, out] = [levelFor('hidden'), levelFor('out')];
  if (sun === null && Math.abs(out - hidden) > TWO_STATES_STOPS)
    return fail({
      sentence: `With the sun out the dome should read EV ${out.toFixed(1)}, with the sun hidden EV ${hidden.toFixed(1)}: say which it was.`,
    });
  return ok({
    levelStops: sun === 'out' ? out : hidden,
    spreadStops: base.light.daylight.spreadStops,
    bearingDeg: facingDeg === 'up' ? null : wrapDeg360(facingDeg + 180),
  });
}

type Facing = number | 'up';

/** Azimuth that the dome looks to; a light stands so far from the camera's axis, positive to the camera's right. */
function facingOf(
  { scene, sources }: SetupCase,
  toward: Extract<ReadOf, { readonly kind: 'incident' }>['toward'],
): Facing | null {
  const cameraDeg = scene.framing.bearingDeg + 180;
  switch (toward.kind) {
    case 'camera':
      return cameraDeg;
    case 'sky':
      return 'up';
    case 'light': {
      const source = sources.find(({ lightId }) => lightId === toward.lightId);
      return source === undefined ? null : cameraDeg - source.light.angleDeg;
    }
  }
}

/**
 * A dome turned level, or upwards. Two domes back to back take half of all light; a third one
 * upwards takes that and half of what level ground gets less half of what ground sends up.
 */
function domeLux(
  { scene, light }: SetupCase,
  at: {
    readonly sky: Sky;
    readonly facingDeg: Facing;
    readonly sunIs: 'out' | 'hidden';
  },
): number {
  const inTwoStates = SKY_CONDITION_TRAITS[scene.condition].beam === 'between-clouds';
  const { beamNormalLux: meanBeamLux, clearBeamNormalLux } = light.daylight;
  const inStateLux = at.sunIs === 'out' ? clearBeamNormalLux : 0;
  const beamNormalLux = inTwoStates ? inStateLux : meanBeamLux;
  const facing = (facingDeg: number): ReturnType<typeof subjectIlluminance> =>
    subjectIlluminance({
      sun: light.sun,
      beamNormalLux,
      sky: at.sky,
      skyline: scene.skyline,
      groundReflectance: scene.groundReflectance,
      facingDeg,
    });
  if (at.facingDeg !== 'up') return facing(at.facingDeg).domeLux;
  const north = facing(0);
  const bothWaysLux = (north.domeLux + facing(180).domeLux) / 2;
  return bothWaysLux + (north.groundLux * (1 - scene.groundReflectance)) / 2;
}

function flash(
  { sources, question }: SetupCase,
  { lightId, powerStops }: Extract<ReadOf, { readonly kind: 'flash' }>,
): Result<ReadingPrediction, Refusal> {
  const place = sources.findIndex((source) => source.lightId === lightId);
  const light = question.lights[place];
  const source = sources[place];
  if (light === undefined || source === undefined)
    return fail({ sentence: 'The light that was read is not in this setup.' });
  return ok({
    levelStops: Math.log2(flashFNumberSquared(light)) + powerStops,
    spreadStops: source.output.spreadStops,
    bearingDeg: null,
  });
}
