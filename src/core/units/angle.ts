const DEG_PER_RAD = 180 / Math.PI;

export const degFromRad = (angleRad: number): number => angleRad * DEG_PER_RAD;
export const radFromDeg = (angleDeg: number): number => angleDeg / DEG_PER_RAD;

export const sinDeg = (angleDeg: number): number => Math.sin(radFromDeg(angleDeg));
export const cosDeg = (angleDeg: number): number => Math.cos(radFromDeg(angleDeg));
export const tanDeg = (angleDeg: number): number => Math.tan(radFromDeg(angleDeg));

/** Arguments a rounding error outside −1 to 1 are clamped. */
export const asinDeg = (sine: number): number => degFromRad(Math.asin(clampUnit(sine)));
/** Arguments a rounding error outside −1 to 1 are clamped. */
export const acosDeg = (cosine: number): number => degFromRad(Math.acos(clampUnit(cosine)));
export const atanDeg = (tangent: number): number => degFromRad(Math.atan(tangent));
export const atan2Deg = (y: number, x: number): number => degFromRad(Math.atan2(y, x));

/** The same angle in 0 ≤ a < 360. */
export const wrapDeg360 = (angleDeg: number): number => {
  const wrapped = ((angleDeg % 360) + 360) % 360;
  return wrapped === 360 ? 0 : wrapped;
};

/** The same angle in −180 ≤ a < 180. */
export const wrapDeg180 = (angleDeg: number): number => wrapDeg360(angleDeg + 180) - 180;

const clampUnit = (value: number): number => Math.min(1, Math.max(-1, value));
