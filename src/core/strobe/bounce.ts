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

const RINGS = 24;
const SPOKES = 48;

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
  // Of 1 cd: the flux of the whole beam, cut evenly.
  const raySr = (2 * Math.PI * (1 - cosDeg(halfDeg))) / (RINGS * SPOKES);
  const atSubjectPerCd = sum(
    raysOf(halfDeg, path.incidenceDeg).map((ray) => {
      const landing = landingOf(head, ray);
      if (landing === null || isBeside(landing, path.panelSideM)) return null;
      const [right, up] = [subject.rightM - landing.rightM, subject.upM - landing.upM];
      const squareM2 = right ** 2 + up ** 2 + subject.outM ** 2;
      const lengthM = Math.sqrt(squareM2);
      // The receptor looks at the middle of the patch.
      const facing =
        (right * subject.rightM + up * subject.upM + subject.outM ** 2) /
        (lengthM * path.surfaceToSubjectM);
      return (
        (raySr * path.reflectance * (subject.outM / lengthM) * Math.max(0, facing)) /
        (Math.PI * squareM2)
      );
    }),
  );
  const directPerCd = 1 / path.surfaceToSubjectM ** 2;
  return {
    againstDirectStops: Math.log2(atSubjectPerCd.total / directPerCd),
    patchDiameterM: 2 * path.headToSurfaceM * tanDeg(halfDeg),
    caughtShare: atSubjectPerCd.count / (RINGS * SPOKES),
  };
}

type Ray = { readonly right: number; readonly up: number; readonly out: number };

/** Directions of equal solid angle inside the beam, whose axis leans by the incidence. */
function raysOf(halfDeg: number, incidenceDeg: number): readonly Ray[] {
  const rays: Ray[] = [];
  const [axisRight, axisOut] = [sinDeg(incidenceDeg), -cosDeg(incidenceDeg)];
  for (let ring = 0; ring < RINGS; ring += 1) {
    const cosine = 1 - ((ring + 0.5) / RINGS) * (1 - cosDeg(halfDeg));
    const sine = sinDeg(acosDeg(cosine));
    for (let spoke = 0; spoke < SPOKES; spoke += 1) {
      const turnDeg = ((spoke + 0.5) / SPOKES) * 360;
      const [across, up] = [sine * cosDeg(turnDeg), sine * sinDeg(turnDeg)];
      rays.push({
        right: cosine * axisRight - across * axisOut,
        up,
        out: cosine * axisOut + across * axisRight,
      });
    }
  }
  return rays;
}

const landingOf = (
  head: SurfacePoint,
  ray: Ray,
): { readonly rightM: number; readonly upM: number } | null => {
  if (ray.out >= 0) return null;
  const reach = -head.outM / ray.out;
  return { rightM: head.rightM + reach * ray.right, upM: head.upM + reach * ray.up };
};

const isBeside = (
  landing: { readonly rightM: number; readonly upM: number },
  panelSideM: number | undefined,
): boolean =>
  panelSideM !== undefined &&
  (Math.abs(landing.rightM) > panelSideM / 2 || Math.abs(landing.upM) > panelSideM / 2);

const sum = (
  values: readonly (number | null)[],
): { readonly total: number; readonly count: number } => {
  const found = values.filter((value) => value !== null);
  return { total: found.reduce((total, value) => total + value, 0), count: found.length };
};

/**
 * ± stops of a bounce: textbooks and meters put the same corner 1.5 to 3.2 stops down (H4, H5, H8);
 * the reflectance of a wall by eye is good to a third of a stop. [practitionerPages]
 */
export const BOUNCE_SPREAD_STOPS = 0.6;
