import { metresPerDegree } from '../place/metres-per-degree.ts';
import type { GeoPoint } from '../place/geo-point.ts';
import { asinDeg, cosDeg, sinDeg } from '../units/angle.ts';
import { isFilled, VOID_HEIGHT_M, type ElevationGrid } from './elevation-grid.ts';
import { groundPerPixelM, mercatorShareX, mercatorShareY, TILE_PX } from './web-mercator.ts';

/** A grid with its longitudes turned to run on from those of a place. */
export type PlacedGrid = {
  readonly grid: ElevationGrid;
  /** Column = longitude · xScale + xOrigin; row = latitude (or Mercator share) · yScale + yOrigin. */
  readonly xScale: number;
  readonly xOrigin: number;
  readonly yScale: number;
  readonly yOrigin: number;
  readonly isMercator: boolean;
  /** From one sample to the next, the mean of both ways, at the place. */
  readonly spacingM: number;
};

/** The grids round a place, each as often as it lies within reach, the finest first; of like ones the earlier. */
export const placeGrids = (
  grids: readonly ElevationGrid[],
  place: GeoPoint,
  reachM: number,
): readonly PlacedGrid[] => {
  const reachDeg = longitudeReachDeg(place.latitudeDeg, reachM);
  return grids
    .flatMap((grid) =>
      TURNS.map((turns) => placedBy(grid, place, turns)).filter(({ xScale, xOrigin }) => {
        const column = place.longitudeDeg * xScale + xOrigin;
        const reach = reachDeg * xScale;
        return column + reach >= grid.rim && column - reach <= grid.columns - 1 - grid.rim;
      }),
    )
    .toSorted((one, other) => one.spacingM - other.spacingM);
};

/** How far west or east a circle of a radius can reach, with a tenth to spare; right up to where it meets a pole. */
export const longitudeReachDeg = (latitudeDeg: number, reachM: number): number =>
  1.1 * asinDeg(sinDeg(reachM / METRES_PER_DEGREE) / cosDeg(latitudeDeg));

const METRES_PER_DEGREE = 111_000;

/** Longitudes and shares are given within one turn of their usual range; a ray leaves it by half a turn. */
const TURNS = [-2, -1, 0, 1, 2] as const;

function placedBy(grid: ElevationGrid, place: GeoPoint, turns: number): PlacedGrid {
  if (grid.lattice === 'degrees') {
    const { northM, eastM } = metresPerDegree(place.latitudeDeg);
    return {
      grid,
      isMercator: false,
      xScale: 1 / grid.columnStep,
      xOrigin: -(grid.west + 360 * turns) / grid.columnStep,
      yScale: -1 / grid.rowStep,
      yOrigin: grid.north / grid.rowStep,
      spacingM: Math.sqrt(northM * grid.rowStep * eastM * grid.columnStep),
    };
  }
  return {
    grid,
    isMercator: true,
    xScale: 1 / (360 * grid.columnStep),
    xOrigin: (mercatorShareX(0) - grid.west - turns) / grid.columnStep,
    yScale: 1 / grid.rowStep,
    yOrigin: -grid.north / grid.rowStep,
    spacingM: groundPerPixelM(place.latitudeDeg, 0) * TILE_PX * grid.rowStep,
  };
}

/** Height at a column and row, bilinear between samples; void where a sample that counts is one. */
export function gridHeightM(
  { heights, columns, rows, filled }: ElevationGrid,
  at: { readonly x: number; readonly y: number },
): { readonly heightM: number; readonly isFilled: boolean } {
  const column = Math.min(columns - 2, Math.max(0, Math.floor(at.x)));
  const row = Math.min(rows - 2, Math.max(0, Math.floor(at.y)));
  const east = at.x - column;
  const south = at.y - row;
  const first = row * columns + column;
  let sum = 0;
  let touched = false;
  for (const [index, share] of [
    [first, (1 - east) * (1 - south)],
    [first + 1, east * (1 - south)],
    [first + columns, (1 - east) * south],
    [first + columns + 1, east * south],
  ] as const) {
    const heightM = heights[index] ?? VOID_HEIGHT_M;
    const counts = share >= NO_SHARE;
    if (heightM === VOID_HEIGHT_M && counts) return { heightM: VOID_HEIGHT_M, isFilled: false };
    if (heightM === VOID_HEIGHT_M) continue;
    touched ||= counts && isFilled(filled, index);
    sum += heightM * share;
  }
  return { heightM: sum, isFilled: touched };
}

/** A corner with less of a share than this does not count: a millionth of a cell. */
const NO_SHARE = 1e-6;

/** Height of the finest grid that knows one at the place, or null. */
export function groundHeightM(placedGrids: readonly PlacedGrid[], place: GeoPoint): number | null {
  for (const { grid, xScale, xOrigin, yScale, yOrigin, isMercator } of placedGrids) {
    const x = place.longitudeDeg * xScale + xOrigin;
    const v = isMercator ? mercatorShareY(place.latitudeDeg) : place.latitudeDeg;
    const y = v * yScale + yOrigin;
    if (!isCovered(grid, x, y)) continue;
    const { heightM } = gridHeightM(grid, { x, y });
    if (heightM !== VOID_HEIGHT_M) return heightM;
  }
  return null;
}

/** Rounding of degrees may put a place on an edge this far out. */
const EDGE = 1e-7;

const isCovered = ({ columns, rows, rim }: ElevationGrid, x: number, y: number): boolean =>
  x >= rim - EDGE && x <= columns - 1 - rim + EDGE && y >= rim - EDGE && y <= rows - 1 - rim + EDGE;
