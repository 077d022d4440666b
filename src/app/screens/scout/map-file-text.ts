import type { ArchiveBounds } from '../../map/local/archive-header.ts';

type Place = { readonly latitudeDeg: number; readonly longitudeDeg: number };

/** '45.50 to 45.90° N, 13.50 to 14.00° E' */
export const boundsText = ({ westDeg, southDeg, eastDeg, northDeg }: ArchiveBounds): string =>
  `${range(southDeg, northDeg, ['N', 'S'])}, ${range(westDeg, eastDeg, ['E', 'W'])}`;

const range = (from: number, to: number, [above, below]: readonly [string, string]): string => {
  const side = (deg: number): string => (deg < 0 ? below : above);
  return side(from) === side(to)
    ? `${Math.min(Math.abs(from), Math.abs(to)).toFixed(2)} to ${Math.max(Math.abs(from), Math.abs(to)).toFixed(2)}° ${side(to)}`
    : `${Math.abs(from).toFixed(2)}° ${side(from)} to ${Math.abs(to).toFixed(2)}° ${side(to)}`;
};

/** How many of the spots lie in the bounds; null where there are none to ask for. */
export const spotsInText = (bounds: ArchiveBounds, spots: readonly Place[]): string | null => {
  if (spots.length === 0) return null;
  const inside = spots.filter(
    ({ latitudeDeg, longitudeDeg }) =>
      latitudeDeg >= bounds.southDeg &&
      latitudeDeg <= bounds.northDeg &&
      longitudeDeg >= bounds.westDeg &&
      longitudeDeg <= bounds.eastDeg,
  ).length;
  if (inside === spots.length) return 'all spots of this shoot lie in it';
  return inside === 0
    ? 'no spot of this shoot lies in it'
    : `${inside} of ${spots.length} spots of this shoot lie in it`;
};

export const sizeText = (bytes: number): string =>
  bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1000))} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
