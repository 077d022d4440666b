import { wrapDeg360 } from '../../core/units/angle.ts';

const POINTS = [
  ['N', 'north'],
  ['NNE', 'north-north-east'],
  ['NE', 'north-east'],
  ['ENE', 'east-north-east'],
  ['E', 'east'],
  ['ESE', 'east-south-east'],
  ['SE', 'south-east'],
  ['SSE', 'south-south-east'],
  ['S', 'south'],
  ['SSW', 'south-south-west'],
  ['SW', 'south-west'],
  ['WSW', 'west-south-west'],
  ['W', 'west'],
  ['WNW', 'west-north-west'],
  ['NW', 'north-west'],
  ['NNW', 'north-north-west'],
] as const;

/** '300° WNW' */
export const bearingShort = (bearingDeg: number): string =>
  `${wholeDegrees(bearingDeg)}° ${pointOf(bearingDeg)[0]}`;

/** '300.4° WNW' */
export const bearingFine = (bearingDeg: number): string =>
  `${wrapDeg360(Math.round(bearingDeg * 10) / 10).toFixed(1)}° ${pointOf(bearingDeg)[0]}`;

/** '300 degrees, west-north-west' */
export const bearingSpoken = (bearingDeg: number): string =>
  `${wholeDegrees(bearingDeg)} degrees, ${pointOf(bearingDeg)[1]}`;

/** Whole degrees, 0 to 359. */
export const wholeDegrees = (bearingDeg: number): number => wrapDeg360(Math.round(bearingDeg));

const pointOf = (bearingDeg: number): readonly [string, string] =>
  POINTS[Math.round(wrapDeg360(bearingDeg) / 22.5) % POINTS.length] ?? POINTS[0];
