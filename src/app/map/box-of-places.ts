import type { GeoPoint } from '../../core/place/geo-point.ts';
import { wrapDeg360 } from '../../core/units/angle.ts';
import { MERCATOR_LIMIT_DEG } from './map-place.ts';

type Box = {
  readonly southDeg: number;
  readonly northDeg: number;
  /** −180 to 180. */
  readonly westDeg: number;
  /** At or east of `westDeg`, so beyond 180 where the box crosses the date line. */
  readonly eastDeg: number;
};

/** The narrowest box round the places, across the date line where that is shorter; null for none. */
export const boxOfPlaces = (places: readonly GeoPoint[]): Box | null => {
  const eastward = places.map(({ longitudeDeg }) => longitudeDeg).toSorted((a, b) => a - b);
  if (eastward.length === 0) return null;
  let west = eastward[0] ?? 0;
  let widestGapDeg = -1;
  eastward.forEach((longitudeDeg, index) => {
    const before = eastward.at(index - 1) ?? longitudeDeg;
    const gapDeg = eastward.length === 1 ? 360 : wrapDeg360(longitudeDeg - before);
    if (gapDeg > widestGapDeg) [widestGapDeg, west] = [gapDeg, longitudeDeg];
  });
  const latitudes = places.map(({ latitudeDeg }) =>
    Math.min(MERCATOR_LIMIT_DEG, Math.max(-MERCATOR_LIMIT_DEG, latitudeDeg)),
  );
  return {
    southDeg: Math.min(...latitudes),
    northDeg: Math.max(...latitudes),
    westDeg: west,
    eastDeg: west + Math.max(...eastward.map((longitudeDeg) => wrapDeg360(longitudeDeg - west))),
  };
};
