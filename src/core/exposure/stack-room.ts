/** Of the usual ring. [lightingPractice] */
export const USUAL_RING_MM = 5;
/** More than these are not screwed together. [lightingPractice] */
export const MOST_STACKED = 4;
/** 28 mm on a 24 × 36 mm sensor: a lens that starts longer leaves as much room as one that starts here. [lightingPractice] */
const SHORTEST_COUNTED_PER_DIAGONAL = 0.65;

/**
 * How deep a stack of rings may be before it cuts the corners of the picture. A lens takes one usual
 * ring at its shortest focal length. The light of a corner comes in under half the diagonal field,
 * tan = diagonal / 2f, and depth times that tangent is what is cut: so the depth grows with the focal
 * length. Common practice, to be looked at through the finder, stopped down. [lightingPractice]
 */
export const stackRoomMm = (lens: {
  readonly focalLengthMm: number;
  readonly shortestMm: number;
  readonly sensorDiagonalMm: number;
}): number => {
  const { focalLengthMm, shortestMm, sensorDiagonalMm } = lens;
  const tightestMm = Math.min(shortestMm, SHORTEST_COUNTED_PER_DIAGONAL * sensorDiagonalMm);
  return (USUAL_RING_MM * focalLengthMm) / tightestMm;
};

export type ThreadFit = 'fits' | 'step-ring' | 'cuts-corners' | 'not-known';

/** A wider filter fits by a step ring, a narrower one cuts the corners. */
export const threadFit = (filterMm: number | null, lensMm: number | null): ThreadFit => {
  if (filterMm === null || lensMm === null) return 'not-known';
  if (filterMm === lensMm) return 'fits';
  return filterMm > lensMm ? 'step-ring' : 'cuts-corners';
};
