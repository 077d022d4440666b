import type { SkyCondition } from '../daylight/sky-condition.ts';
import { frameSpreadStops } from '../daylight/spread.ts';
import { angleFromSun } from '../sky/angle-from-sun.ts';
import type { FrameReading } from '../sky/frame-reading.ts';
import { type Framing, projection } from '../sky/framing.ts';
import type { Patch } from '../sky/patch.ts';
import { patchRectangle, WHOLE_PICTURE } from '../sky/picture-rectangle.ts';
import type { SunPosition } from '../sun-moon/sun-position.ts';

export type FrameSpreads = {
  readonly frameSpreadStops: number;
  /** The frame's where the frame stands in for the patch. */
  readonly patchSpreadStops: number;
};

/** ± stops round the frame's and the patch's EV as the sun moves; NaN when the frame shows no sky. */
export const frameSpreads = (scene: {
  readonly framing: Framing;
  readonly patch?: Patch | null | undefined;
  readonly condition: SkyCondition;
}): ((sun: SunPosition, reading: FrameReading | null) => FrameSpreads) => {
  const { condition, patch } = scene;
  const camera = projection(scene.framing);
  const rectangle = patch === undefined || patch === null ? null : patchRectangle(patch);
  const toFrameDeg = angleFromSun(camera, WHOLE_PICTURE);
  const toPatchDeg = rectangle === null ? toFrameDeg : angleFromSun(camera, rectangle);

  return (sun, reading) => {
    if (reading === null) return { frameSpreadStops: NaN, patchSpreadStops: NaN };
    const sunTrueAltitudeDeg = sun.trueAltitudeDeg;
    const ofFrame = frameSpreadStops({
      condition,
      sunTrueAltitudeDeg,
      angleFromSunDeg: toFrameDeg(sun),
      of: 'frame',
    });
    return {
      frameSpreadStops: ofFrame,
      patchSpreadStops: reading.patchIsFrame
        ? ofFrame
        : frameSpreadStops({
            condition,
            sunTrueAltitudeDeg,
            angleFromSunDeg: toPatchDeg(sun),
            of: 'patch',
          }),
    };
  };
};
