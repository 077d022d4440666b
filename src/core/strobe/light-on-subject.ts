import { atanDeg, cosDeg, radFromDeg, sinDeg, tanDeg } from '../units/angle.ts';
import type { BouncePath } from './bounce.ts';
import type { LightPath } from './light-path.ts';

/** Cells across the beam each way; the sum is then good to a hundredth of a stop. */
const CELLS = 96;
/** Flatter than this a ray runs along the surface and brings nothing. */
const FLATTEST_DEG = 89;

/**
 * Light that one candela sends to a receptor of its subject, per square metre: 1/(d² + r²) on the
 * axis, that times the light off it for a feathered one, the lit surface added up for a bounced
 * one. For the path that checks recipes; it takes nothing from the losses they were solved with.
 */
export function perSquareM(
  path: LightPath | undefined,
  source: { readonly distanceM: number; readonly radiusM: number },
): number {
  if (path?.kind === 'bounced')
    return bouncedPerSquareM({ ...path.off, surfaceToSubjectM: source.distanceM });
  const straight = 1 / Math.hypot(source.distanceM, source.radiusM) ** 2;
  return path === undefined ? straight : straight * shareOffAxis(path);
}

/** As a share of the light on the axis: the cosine of a flat face, a tenth per 3.32 stops of a reflector's edge. [iesHandbook] [lightingPractice] */
function shareOffAxis({ offAxisDeg, beam }: Extract<LightPath, { kind: 'feathered' }>): number {
  const face = beam.diffuse ? Math.max(0, cosDeg(offAxisDeg)) : 1;
  if (beam.coreDeg === null || offAxisDeg <= beam.coreDeg / 2) return face;
  const quartersOver = (offAxisDeg - beam.coreDeg / 2) / (beam.coreDeg / 8);
  return Math.max(2 ** -20, face * 10 ** (-quartersOver * Math.log10(2)));
}

/**
 * By the surface itself, cell by cell: E = I cos ε / s² falls on it, it sends L = ρ E / π, and a
 * cell of area A brings L A cos θ cos γ / t² to a receptor turned to the middle of the patch.
 * [iesHandbook]
 */
function bouncedPerSquareM(path: BouncePath): number {
  const half = path.beamDeg / 2;
  const headOutM = path.headToSurfaceM * cosDeg(path.incidenceDeg);
  const headRightM = -path.headToSurfaceM * sinDeg(path.incidenceDeg);
  const toRightM = path.surfaceToSubjectM * sinDeg(path.exitDeg);
  const toOutM = path.surfaceToSubjectM * cosDeg(path.exitDeg);
  const axis = { right: sinDeg(path.incidenceDeg), out: -cosDeg(path.incidenceDeg) };
  const edgeCosine = cosDeg(half);
  const panelHalfM = (path.panelSideM ?? Infinity) / 2;
  const ahead = cellsOf(
    Math.max(path.incidenceDeg - half, atanDeg((-panelHalfM - headRightM) / headOutM)),
    Math.min(path.incidenceDeg + half, atanDeg((panelHalfM - headRightM) / headOutM)),
  );
  const asideEndDeg = Math.min(half, atanDeg(panelHalfM / headOutM));
  const aside = cellsOf(-asideEndDeg, asideEndDeg);
  const cellRad = radFromDeg(ahead.stepDeg) * radFromDeg(aside.stepDeg);
  let sum = 0;
  for (const alongRow of ahead.cells) {
    const rightM = headRightM + headOutM * alongRow.tangent;
    const slantM = headOutM / alongRow.cosine;
    for (const alongColumn of aside.cells) {
      const upM = slantM * alongColumn.tangent;
      if (Math.abs(upM) > panelHalfM) continue;
      const inM = lengthOf(rightM - headRightM, upM, headOutM);
      const inBeam = ((rightM - headRightM) * axis.right - headOutM * axis.out) / inM;
      if (inBeam < edgeCosine) continue;
      const cosines = alongRow.cosine * alongColumn.cosine;
      const areaM2 = (headOutM * slantM * cellRad) / (cosines * cosines);
      const luminance = (path.reflectance * headOutM) / (inM * inM * inM * Math.PI);
      const outM = lengthOf(toRightM - rightM, upM, toOutM);
      const facing =
        ((toRightM - rightM) * toRightM + toOutM * toOutM) / (outM * path.surfaceToSubjectM);
      sum += (luminance * areaM2 * toOutM * Math.max(0, facing)) / (outM * outM * outM);
    }
  }
  return sum;
}

const lengthOf = (rightM: number, upM: number, outM: number): number =>
  Math.sqrt(rightM * rightM + upM * upM + outM * outM);

type Cells = {
  readonly cells: readonly { readonly tangent: number; readonly cosine: number }[];
  readonly stepDeg: number;
};

const cellsOf = (fromDeg: number, toDeg: number): Cells => {
  const from = Math.max(-FLATTEST_DEG, fromDeg);
  const stepDeg = Math.max(0, Math.min(FLATTEST_DEG, toDeg) - from) / CELLS;
  const cells = Array.from({ length: CELLS }, (_, cell) => {
    const middleDeg = from + (cell + 0.5) * stepDeg;
    return { tangent: tanDeg(middleDeg), cosine: cosDeg(middleDeg) };
  });
  return { cells, stepDeg };
};
