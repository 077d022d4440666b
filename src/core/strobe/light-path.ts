import type { BeamShape } from './beam.ts';
import { bounce, type Bounce, type BouncePath } from './bounce.ts';

/** How a light comes to its subject when not straight along its axis, and what that costs. */
export type LightPath =
  | {
      readonly kind: 'feathered';
      /** Between the axis and the way to the subject. */
      readonly offAxisDeg: number;
      readonly beam: BeamShape;
      /** Its part of the light's `lossStops`. */
      readonly lossStops: number;
    }
  | {
      readonly kind: 'bounced';
      readonly off: Omit<BouncePath, 'surfaceToSubjectM'>;
      readonly lossStops: number;
    };

export type BouncedPath = {
  readonly path: Extract<LightPath, { kind: 'bounced' }>;
  readonly bounce: Bounce;
  /** Of the disc that the subject sees lit. */
  readonly sourceDiameterM: number;
};

/**
 * A bounce as a light of a recipe takes it: the lit patch is the source, its light falls with
 * d² + r² from there, and the loss is such that at this distance it gives exactly what the patch,
 * added up ray by ray, gives. [iesHandbook]
 */
export function bouncedPath(asked: BouncePath): BouncedPath {
  const found = bounce(asked);
  const { surfaceToSubjectM, ...off } = asked;
  const sourceDiameterM = litDiameterM(found.patchDiameterM, asked.panelSideM);
  const discStops = Math.log2(1 + (sourceDiameterM / 2 / surfaceToSubjectM) ** 2);
  return {
    path: { kind: 'bounced', off, lossStops: -found.againstDirectStops - discStops },
    bounce: found,
    sourceDiameterM,
  };
}

/** Of a panel smaller than the patch the disc of its own area. */
const litDiameterM = (patchDiameterM: number, panelSideM: number | undefined): number =>
  Math.min(
    patchDiameterM,
    panelSideM === undefined ? Infinity : panelSideM * (2 / Math.sqrt(Math.PI)),
  );
