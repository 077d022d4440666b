/** The value, which a test takes for granted; a test whose ground is gone fails here. */
export const defined = <Value>(value: Value | null | undefined): Value => {
  if (value === null || value === undefined) throw new Error('expected a value, found none');
  return value;
};
