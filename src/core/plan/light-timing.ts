import { circleOfConfusionMm } from '../exposure/depth-of-field.ts';
import { motionBlurMm, SUBJECT_SPEED_M_S } from '../exposure/motion-blur.ts';
import {
  clippedStops,
  flashDurationAtS,
  isHighSpeedSync,
  powerControl,
  type PowerControl,
} from '../strobe/sync.ts';
import type { Head } from './kit.ts';
import { flashDurations } from './setup-lights.ts';
import type { Setup } from './setup-schema.ts';
import type { ShootFraming } from './spot-schema.ts';

/** A light's flash against the shutter and against the subject's movement. */
export type LightTiming = {
  /** t0.1 at its power; null: not known. */
  readonly flashDurationS: number | null;
  readonly control: PowerControl;
  /** Stops of its light that the shutter cuts off; null: not known. In high-speed sync none. */
  readonly clippedStops: number | null;
  /** Circles of confusion that the subject crosses while the light lasts; null: not known. */
  readonly blurCircles: number | null;
  /** In high-speed sync the light lasts as long as the shutter is open. */
  readonly highSpeedSync: boolean;
};

export function lightTiming(shot: {
  readonly head: Head;
  readonly powerStops: number;
  readonly shutterS: number;
  readonly syncShutterS: number;
  readonly setup: Pick<Setup, 'motion'>;
  readonly framing: ShootFraming;
}): LightTiming {
  const { head, powerStops, shutterS, framing } = shot;
  const known = flashDurations(head);
  const highSpeedSync = isHighSpeedSync(shot);
  const flashDurationS = flashDurationAtS(
    { ...known, minPowerStops: head.minPowerStops },
    powerStops,
  );
  const lightS =
    highSpeedSync || flashDurationS === null
      ? highSpeedSync
        ? shutterS
        : null
      : Math.min(shutterS, flashDurationS);
  return {
    flashDurationS,
    control: powerControl(known),
    clippedStops: highSpeedSync
      ? 0
      : flashDurationS === null
        ? null
        : clippedStops({ shutterS, flashDurationS }),
    blurCircles:
      lightS === null
        ? null
        : motionBlurMm({
            speedMS: SUBJECT_SPEED_M_S[shot.setup.motion],
            lightS,
            focalLengthMm: framing.focalLengthMm,
            distanceM: framing.cameraDistanceM,
          }) / circleOfConfusionMm(framing),
    highSpeedSync,
  };
}
