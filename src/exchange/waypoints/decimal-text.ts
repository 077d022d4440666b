/** A number in plain decimals, never with an exponent, without zeros that say nothing. */
export const decimalText = (value: number, places: number): string => {
  const digits = value.toFixed(places);
  const short = digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits;
  return short === '-0' ? '0' : short;
};

/** Degrees of latitude or longitude to 1e-7°, a centimetre. */
export const angleText = (angleDeg: number): string => decimalText(angleDeg, 7);
