import type { Framing } from '../sky/framing.ts';
import type { Setup } from './setup-schema.ts';
import type { Spot } from './shoot.ts';
import type { ShootFraming } from './spot-schema.ts';

/** The framing a setup is taken with: its own, or its spot's. */
export const framingOf = (setup: Pick<Setup, 'framing'>, spot: Spot): ShootFraming =>
  setup.framing ?? spot.framing;

/** The framing as projected: sides swapped for portrait. */
export function projectedFraming(framing: ShootFraming): Framing {
  const upright = framing.orientation === 'portrait';
  return {
    bearingDeg: framing.bearingDeg,
    tiltDeg: framing.tiltDeg,
    focalLengthMm: framing.focalLengthMm,
    sensorWidthMm: upright ? framing.sensorHeightMm : framing.sensorWidthMm,
    sensorHeightMm: upright ? framing.sensorWidthMm : framing.sensorHeightMm,
  };
}
