/** Micro reciprocal degrees, 10⁶ / K: equal steps look about equally large. [cie15] */
export const miredFromKelvin = (kelvin: number): number => 1e6 / kelvin;

/** Infinity at 0 mired: bluer than any kelvin names. */
export const kelvinFromMired = (mired: number): number => 1e6 / mired;

/** A light behind a filter that shifts it; positive is warmer, shifts add. NaN below 0 mired: no kelvin names it. */
export const shiftedKelvin = (kelvin: number, miredShift: number): number => {
  const mired = miredFromKelvin(kelvin) + miredShift;
  return mired > 0 ? kelvinFromMired(mired) : NaN;
};
