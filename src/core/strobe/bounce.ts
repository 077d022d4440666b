import { acosDeg, cosDeg, sinDeg, tanDeg } from '../units/angle.ts';

/** Metres on a flat surface: right, up, and out of it towards head and subject. */
export type SurfacePoint = {
  readonly rightM: number;
  readonly upM: number;
  readonly outM: number;
};

export type BouncePath = {
  /** From the head to the middle of its patch. */
  readonly headToSurfaceM: number;
  /** From the middle of the patch to the subject. */
  readonly surfaceToSubjectM: number;
  /** Between the beam and the surface's normal, 0 to 89. */
  readonly incidenceDeg: number;
  /** Between the surface's normal and the way to the subject, 0 to 89, on the far side from the head. */
  readonly exitDeg: number;
  /** Full angle of the beam, 1 to 170; even inside it. */
  readonly beamDeg: number;
  /** 0 to 1. */
  readonly reflectance: number;
  /** Of a panel, square, centred on the beam; absent: a wall larger than the patch. */
  readonly panelSideM?: number | undefined;
};

export type Bounce = {
  /** Stops against the same head aimed at the subject from as far as the surface is; negative. */
  readonly againstDirectStops: number;
  /** Width of the patch across the beam: what the subject sees as its source. */
  readonly patchDiameterM: number;
  /** Share of the beam that lands on the surface. */
  readonly caughtShare: number;
};

const RINGS = 48;
const SPOKES = 96;

/**
 * A head bounced off a matt surface. The beam is cut into rays of equal solid angle; each lights the
 * surface where it lands, which sends it on by Lambert's law: E = Σ Φ ρ cos θ / (π s²). Against
 * the same head aimed straight at the subject over the distance from surface to subject, so the loss
 * has path, spread and reflectance in it. [iesHandbook]
 */
export function bounce(path: BouncePath): Bounce {
  const head: SurfacePoint = {
    rightM: -path.headToSurfaceM * sinDeg(path.incidenceDeg),
    upM: 0,
    outM: path.headToSurfaceM * cosDeg(path.incidenceDeg),
  };
  const subject: SurfacePoint = {
    rightM: path.surfaceToSubjectM * sinDeg(path.exitDeg),
    upM: 0,
    outM: path.surfaceToSubjectM * cosDeg(path.exitDeg),
  };
  const halfDeg = path.beamDeg / 2;
  // Of 1 cd: the flux of the beam, cut evenly; of a small panel only as much of it as may land there.
  const usedHalfDeg = Math.min(halfDeg, coveringHalfDeg(head, path));
  const raySr = (2 * Math.PI * (1 - cosDeg(usedHalfDeg))) / (RINGS * SPOKES);
  const found = alongRays(path, usedHalfDeg, (landing) => {
    const right = subject.rightM - landing.rightM;
    const squareM2 = right ** 2 + landing.upM ** 2 + subject.outM ** 2;
    // The receptor looks at the middle of the patch.
    const facing = right * subject.rightM + subject.outM ** 2;
    return (subject.outM * Math.max(0, facing)) / squareM2 ** 2;
  });
  const atSubjectPerCd =
    (found.total * raySr * path.reflectance) / (Math.PI * path.surfaceToSubjectM);
  const directPerCd = 1 / path.surfaceToSubjectM ** 2;
  return {
    againstDirectStops: Math.log2(atSubjectPerCd / directPerCd),
    patchDiameterM: 2 * path.headToSurfaceM * tanDeg(halfDeg),
    caughtShare:
      ((found.count / (RINGS * SPOKES)) * (1 - cosDeg(usedHalfDeg))) / (1 - cosDeg(halfDeg)),
  };
}

/** Of the narrowest cone round the beam's axis that a panel lies in; without a panel every ray is used. */
function coveringHalfDeg(head: SurfacePoint, { panelSideM, incidenceDeg }: BouncePath): number {
  if (panelSideM === undefined) return 180;
  const halfM = panelSideM / 2;
  const cornersDeg = [-halfM, halfM].map((rightM) => {
    const alongM = (rightM - head.rightM) * sinDeg(incidenceDeg) + head.outM * cosDeg(incidenceDeg);
    return acosDeg(alongM / Math.hypot(rightM - head.rightM, halfM, head.outM));
  });
  return Math.max(...cornersDeg);
}

type Landing = { readonly rightM: number; readonly upM: number };

/**
 * Sums over directions of equal solid angle inside a cone round the beam's axis, which leans by the
 * incidence; those that miss the surface or land beside a panel bring nothing.
 */
function alongRays(
  { headToSurfaceM, incidenceDeg, panelSideM }: BouncePath,
  halfDeg: number,
  each: (landing: Landing) => number,
): { readonly total: number; readonly count: number } {
  const [axisRight, axisOut] = [sinDeg(incidenceDeg), -cosDeg(incidenceDeg)];
  const [headRightM, headOutM] = [-headToSurfaceM * axisRight, -headToSurfaceM * axisOut];
  const panelHalfM = (panelSideM ?? Infinity) / 2;
  const spokes = Array.from({ length: SPOKES }, (_, spoke) => {
    const turnDeg = ((spoke + 0.5) / SPOKES) * 360;
    return { across: cosDeg(turnDeg), up: sinDeg(turnDeg) };
  });
  let [total, count] = [0, 0];
  for (let ring = 0; ring < RINGS; ring += 1) {
    const cosine = 1 - ((ring + 0.5) / RINGS) * (1 - cosDeg(halfDeg));
    const sine = Math.sqrt(1 - cosine ** 2);
    for (const spoke of spokes) {
      const rayOut = cosine * axisOut + sine * spoke.across * axisRight;
      if (rayOut >= 0) continue;
      const reach = -headOutM / rayOut;
      const rightM = headRightM + reach * (cosine * axisRight - sine * spoke.across * axisOut);
      const upM = reach * sine * spoke.up;
      if (Math.abs(rightM) > panelHalfM || Math.abs(upM) > panelHalfM) continue;
      total += each({ rightM, upM });
      count += 1;
    }
  }
  return { total, count };
}

/**
 * ± stops of a bounce: textbooks and meters put the same corner 1.5 to 3.2 stops down (H4, H5, H8);
 * the reflectance of a wall by eye is good to a third of a stop. [practitionerPages]
 */
export const BOUNCE_SPREAD_STOPS = 0.6;
