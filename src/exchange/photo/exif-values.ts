/** Tags as they were decoded: numbers, pairs of numerator and denominator, texts, or lists of these. */
export type ExifTags = Readonly<Record<string, { readonly value?: unknown } | undefined>>;

/** A RATIONAL or SRATIONAL; NaN for a denominator of 0 or another type, null where the tag is absent. */
export function ratioOf(tags: ExifTags, name: string): number | null {
  const value = tags[name]?.value;
  return value === undefined ? null : quotient(value);
}

/** The parts of a list of RATIONALs. */
export function ratiosOf(tags: ExifTags, name: string): readonly number[] | null {
  const value = tags[name]?.value;
  if (value === undefined) return null;
  return Array.isArray(value) ? value.map(quotient) : [];
}

/** A SHORT, LONG or BYTE, the first of several; NaN for another type, null where the tag is absent. */
export function wholeOf(tags: ExifTags, name: string): number | null {
  const value = tags[name]?.value;
  if (value === undefined) return null;
  const first: unknown = Array.isArray(value) ? value[0] : value;
  return typeof first === 'number' ? first : Number.NaN;
}

/** An ASCII text without its padding; null where the tag is absent or empty. */
export function textOf(tags: ExifTags, name: string): string | null {
  const value = tags[name]?.value;
  const first: unknown = Array.isArray(value) ? value[0] : value;
  if (typeof first !== 'string') return null;
  const text = first.replaceAll(/\p{Cc}/gu, ' ').trim();
  return text === '' ? null : text;
}

const quotient = (value: unknown): number => {
  if (!Array.isArray(value)) return Number.NaN;
  const [numerator, denominator] = value as readonly unknown[];
  return typeof numerator === 'number' && typeof denominator === 'number' && denominator !== 0
    ? numerator / denominator
    : Number.NaN;
};
