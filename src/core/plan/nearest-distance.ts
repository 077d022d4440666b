import { facePlaces, type Row } from './face-places.ts';
import { lightInFrame } from './light-in-frame.ts';
import { spreadStops, type LightStand } from './row-of-faces.ts';
import type { ShootFraming } from './spot-schema.ts';

/** Closer than this no light is put to a face, common practice. [lightingPractice] */
const NEAREST_TO_A_FACE_M = 0.5;
const STEP_M = 0.05;

/**
 * How near a light may come along its own line: not into the picture, not past the spread that
 * the row allows, not closer to a face than half a metre. Where it breaks one of them already it
 * may stay, not come nearer.
 */
export function nearestDistanceM(
  stand: LightStand,
  row: Row & { readonly spreadLimitStops: number },
  framing: ShootFraming,
): number {
  const places = facePlaces(row);
  const allowed = (distanceM: number): boolean => {
    const moved = { ...stand, distanceM };
    return (
      spreadStops(moved, row, places) <= row.spreadLimitStops && !lightInFrame(moved, row, framing)
    );
  };
  let nearestM = stand.distanceM;
  for (let steps = 1; ; steps += 1) {
    const distanceM = stand.distanceM - steps * STEP_M;
    if (distanceM < NEAREST_TO_A_FACE_M || !allowed(distanceM)) return nearestM;
    nearestM = distanceM;
  }
}
