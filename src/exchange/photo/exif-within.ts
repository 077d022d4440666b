/** Lets a value through that lies within bounds; any other is left out with a note of what was found and expected. */
export type Within = (
  what: string,
  value: number | null,
  bounds: { readonly least: number; readonly most: number; readonly unit: string },
) => number | null;

export const withinNoting =
  (notes: string[]): Within =>
  (what, value, { least, most, unit }) => {
    if (value === null || (value >= least && value <= most)) return value;
    const found = Number.isFinite(value) ? `${plain(value)}${unit}` : 'no number';
    notes.push(
      `${what}: found ${found}, expected ${plain(least)} to ${plain(most)}${unit}; left out.`,
    );
    return null;
  };

const plain = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '−');
