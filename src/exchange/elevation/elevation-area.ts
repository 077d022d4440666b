import { longitudeReachDeg } from '../../core/skyline/placed-grid.ts';

/** What part of the elevation data is wanted: everything within reach of a place. */
export type ElevationArea = {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly reachM: number;
};

export type ElevationBounds = {
  readonly southDeg: number;
  readonly northDeg: number;
  /** May lie beyond ±180°. */
  readonly westDeg: number;
  readonly eastDeg: number;
};

/** No degree of latitude is shorter. */
const SHORTEST_DEGREE_M = 110_000;

export const boundsOf = ({ latitudeDeg, longitudeDeg, reachM }: ElevationArea): ElevationBounds => {
  const northDeg = reachM / SHORTEST_DEGREE_M;
  const eastDeg = longitudeReachDeg(latitudeDeg, reachM);
  return {
    southDeg: latitudeDeg - northDeg,
    northDeg: latitudeDeg + northDeg,
    westDeg: longitudeDeg - eastDeg,
    eastDeg: longitudeDeg + eastDeg,
  };
};
