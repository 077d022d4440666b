import { fNumberFromStops } from '../exposure/aperture-scale.ts';
import { circleOfConfusionMm, depthOfField, type SharpZone } from '../exposure/depth-of-field.ts';
import { depthOfGroupM, type Row } from './face-places.ts';
import type { ShootFraming } from './spot-schema.ts';

export type SharpRows = {
  /** Focused on the front row. */
  readonly sharp: SharpZone;
  readonly lastRowM: number;
  /** How far the last row stands behind what is sharp; 0 where it is not. */
  readonly outsideM: number;
  /** Widest aperture in third stops that covers it, focused on the front row; null: it is covered, or the lens has none. */
  readonly coveredFromFNumber: number | null;
  /** Focused between the rows: where, and from which aperture both are sharp; null as above. */
  readonly between: { readonly focusM: number; readonly fNumber: number } | null;
};

/** Whether first and last row are sharp at an aperture, and what would make them so. [ray2002] */
export function sharpRows(
  framing: ShootFraming,
  row: Row,
  lens: { readonly fNumber: number; readonly maxFNumber: number },
): SharpRows {
  const { focalLengthMm, cameraDistanceM: firstM } = framing;
  const circleMm = circleOfConfusionMm(framing);
  const lastRowM = firstM + depthOfGroupM(row);
  const sharp = depthOfField({
    focalLengthMm,
    circleMm,
    fNumber: lens.fNumber,
    focusDistanceM: firstM,
  });
  const outsideM = Math.max(0, lastRowM - sharp.farM);
  if (outsideM === 0) return { sharp, lastRowM, outsideM, coveredFromFNumber: null, between: null };
  const covers = (focusM: number): number | null => {
    const fNumber = coveringFNumber({ focalLengthMm, circleMm, focusM, farM: lastRowM });
    return fNumber > lens.maxFNumber * 1.01 ? null : fNumber;
  };
  const focusM = (2 * firstM * lastRowM) / (firstM + lastRowM);
  const fNumber = covers(focusM);
  return {
    sharp,
    lastRowM,
    outsideM,
    coveredFromFNumber: covers(firstM),
    between: fNumber === null ? null : { focusM, fNumber },
  };
}

/**
 * Widest aperture, in third stops, at which a distance is just sharp: the far limit s(H − f)/(H − s)
 * solved for H, and H = f²/(N c) + f for N. [ray2002]
 */
function coveringFNumber(shot: {
  readonly focalLengthMm: number;
  readonly circleMm: number;
  readonly focusM: number;
  readonly farM: number;
}): number {
  const { focalLengthMm, circleMm, focusM, farM } = shot;
  const focalM = focalLengthMm / 1000;
  const hyperfocalM = (focusM * (farM - focalM)) / (farM - focusM);
  const exact = focalLengthMm ** 2 / (circleMm * (hyperfocalM * 1000 - focalLengthMm));
  return fNumberFromStops(Math.ceil(6 * Math.log2(exact) - 1e-6) / 3);
}
