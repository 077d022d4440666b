/** What of the moon's position sets its light. */
export type MoonForLight = {
  /** Of the centre, seen from the place, without refraction. */
  readonly trueAltitudeDeg: number;
  /** 0 full to 180 new. */
  readonly phaseAngleDeg: number;
  /** Angle under which the earth's radius is seen from the moon. */
  readonly horizontalParallaxDeg: number;
};

const MEAN_PARALLAX_DEG = 0.951;

/** As for the sun: log10 lux of the full moon in powers of true altitude / 90. [explanatorySupplement1992] */
const SEGMENTS = [
  { fromDeg: 20, l0: -1.95, l1: 4.06, l2: -4.24, l3: 1.56 },
  { fromDeg: 5, l0: -2.58, l1: 12.58, l2: -42.58, l3: 59.06 },
  { fromDeg: -0.8, l0: -2.79, l1: 24.27, l2: -252.95, l3: 1321.29 },
] as const;

/**
 * Horizontal illuminance by the moon under a clear sky; 0 below its setting at −0.8°. Other
 * published models give up to 0.6 stop more at full moon. [explanatorySupplement1992]
 */
export const moonlightLux = (moon: MoonForLight): number => {
  const segment = SEGMENTS.find(({ fromDeg }) => moon.trueAltitudeDeg >= fromDeg);
  if (segment === undefined) return 0;
  const x = moon.trueAltitudeDeg / 90;
  const { phaseAngleDeg } = moon;
  return (
    10 **
    (segment.l0 +
      x * (segment.l1 + x * (segment.l2 + x * segment.l3)) -
      0.00868 * phaseAngleDeg -
      2.2e-9 * phaseAngleDeg ** 4 +
      2 * Math.log10(moon.horizontalParallaxDeg / MEAN_PARALLAX_DEG))
  );
};
