import type { TerrainOfSpot } from '../../../../core/plan/spot-schema.ts';
import type { GeoPoint } from '../../../../core/place/geo-point.ts';
import { shareText } from './source-lines.ts';

/** What the worker answers, as far as it is kept or told. */
export type TerrainAnswer = {
  readonly altitudesDeg: readonly number[];
  readonly groundElevationM: number;
  readonly voidShare: number;
  readonly uncoveredShare: number;
  readonly coveredKm: number;
  readonly sources: readonly string[];
  readonly unusedFiles: readonly string[];
  readonly absurdCount: number;
};

const MOST_ORIGIN_LENGTH = 1000;
const MOST_NAMED = 6;

/** 'N45E012.hgt; ground 12 m, to 40 km' */
export function terrainOrigin(answer: TerrainAnswer, host: string | null): string {
  const { sources, groundElevationM, coveredKm, uncoveredShare } = answer;
  const named =
    sources.length > MOST_NAMED
      ? `${sources.slice(0, MOST_NAMED).join(', ')} and ${sources.length - MOST_NAMED} more`
      : sources.join(', ');
  const by = host === null ? named : `elevation tiles of ${host}`;
  const reach = coveredKm < 1 ? '' : `, every way to ${coveredKm.toFixed(0)} km`;
  const holes = uncoveredShare > 0 ? `, ${shareText(uncoveredShare)} of the way without data` : '';
  return `${by}; ground ${metresText(groundElevationM)}${reach}${holes}`.slice(
    0,
    MOST_ORIGIN_LENGTH,
  );
}

/** What the spot keeps of it; rounded to a thousandth of a degree, and to what a spot may hold. */
export const terrainOf = (worked: {
  readonly answer: TerrainAnswer;
  readonly origin: string;
  readonly dated: string;
  readonly place: GeoPoint;
}): TerrainOfSpot => ({
  altitudesDeg: worked.answer.altitudesDeg.map((altitudeDeg) =>
    Number(Math.min(90, Math.max(-10, altitudeDeg)).toFixed(3)),
  ),
  origin: worked.origin,
  dated: worked.dated,
  latitudeDeg: worked.place.latitudeDeg,
  longitudeDeg: worked.place.longitudeDeg,
  voidShare: Math.min(1, Math.max(0, worked.answer.voidShare)),
});

/** What must be said of an answer besides what is kept of it. */
export const answerNotes = ({ unusedFiles, absurdCount }: TerrainAnswer): readonly string[] =>
  [
    unusedFiles.length === 0
      ? ''
      : `Out of reach, and not used: ${unusedFiles.slice(0, MOST_NAMED).join(', ')}${unusedFiles.length > MOST_NAMED ? ` and ${unusedFiles.length - MOST_NAMED} more` : ''}.`,
    absurdCount === 0
      ? ''
      : `Heights that no land has, taken as missing: ${absurdCount.toLocaleString('en-GB')}.`,
  ].filter((note) => note !== '');

/** Nearer than this both say the same. */
const SAME_ELEVATION_M = 2;

/** What the data say of the ground against what the spot says; null where they agree. */
export const elevationDoubt = (answer: TerrainAnswer, elevationM: number): string | null =>
  Math.abs(answer.groundElevationM - elevationM) < SAME_ELEVATION_M
    ? null
    : `The ground here is ${metresText(answer.groundElevationM)} above sea level by the data, ${metresText(elevationM)} by the spot; the skyline is seen from the data’s ground.`;

const metresText = (heightM: number): string => `${Math.round(heightM)} m`.replace('-', '−');
