import type { GeoPoint } from '../place/geo-point.ts';

/** Longitude and latitude, degrees east and north. */
export type Corner = readonly [longitudeDeg: number, latitudeDeg: number];

/** Something that stands on the ground and hides sky and sun. */
export type Obstacle = {
  readonly kind: 'building' | 'wall' | 'trees';
  /** A ring, its first corner not repeated, or else a line. A closed wall is open inside. */
  readonly closed: boolean;
  readonly outline: readonly Corner[];
  /** Courtyards and clearings of a closed outline. */
  readonly holes?: readonly (readonly Corner[])[];
  /** Of its top above its foot. */
  readonly heightM: number;
  /** Of the lowest leaves above the foot, or of the underside of a part that stands on nothing; 0 else. */
  readonly crownBaseM: number;
  /** Share of the light that comes through, 0 to 1; 0 for buildings and walls. */
  readonly passesInLeaf: number;
  readonly passesBare: number;
  /** Above sea level; null: on the level of the place it is seen from. */
  readonly footElevationM: number | null;
};

/** Whether an outline has an inside that is filled. */
export const isSolid = (obstacle: Obstacle): boolean =>
  obstacle.closed && obstacle.kind !== 'wall' && obstacle.outline.length > 2;

/** Of an obstacle's foot above the ground of a place; 0 where one of the two elevations is not known. */
export const footAboveGroundM = (obstacle: Obstacle, { elevationM }: GeoPoint): number =>
  obstacle.footElevationM === null || elevationM === undefined
    ? 0
    : obstacle.footElevationM - elevationM;

/** Between the tropics trees are taken to keep their leaves. */
const TROPIC_DEG = 23.44;
const FIRST_MONTH_IN_LEAF = 5;
const LAST_MONTH_IN_LEAF = 10;

/**
 * Whether trees that lose their leaves have them: May to October north of the tropics, November to
 * April south of them. Common practice; a late spring or a height of 1,000 m shift it by weeks.
 */
export function isInLeaf({
  date,
  latitudeDeg,
}: {
  /** Civil, 2027-05-14. */
  readonly date: string;
  readonly latitudeDeg: number;
}): boolean {
  if (Math.abs(latitudeDeg) <= TROPIC_DEG) return true;
  const month = Number(date.slice(5, 7));
  const isNorthernSummer = month >= FIRST_MONTH_IN_LEAF && month <= LAST_MONTH_IN_LEAF;
  return latitudeDeg > 0 ? isNorthernSummer : !isNorthernSummer;
}

/** Share of the light that an obstacle lets through on a date, 0 to 1. */
export const lightPassed = (
  obstacle: Obstacle,
  season: { readonly date: string; readonly latitudeDeg: number },
): number => (isInLeaf(season) ? obstacle.passesInLeaf : obstacle.passesBare);

/** Crowns that let this much through or more are no skyline, and who stands behind them is in the sun. */
export const OPEN_FROM_SHARE = 0.5;

/**
 * Shares that trees let through: single ones in leaf about 0.2, leafless about 0.6 of what falls on
 * a wall behind them [heisler1986]; conifers and the depth of a wood are common practice. Crowns
 * differ from these by half and more.
 */
export const TREE_LIGHT = {
  broadleaved: { passesInLeaf: 0.2, passesBare: 0.6 },
  evergreen: { passesInLeaf: 0.15, passesBare: 0.15 },
  wood: { passesInLeaf: 0.05, passesBare: 0.3 },
} as const;
