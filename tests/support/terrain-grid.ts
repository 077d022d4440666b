import type { ElevationGrid } from '../../src/core/skyline/elevation-grid.ts';
import {
  terrainSkyline,
  type TerrainQuestion,
  type TerrainSkyline,
} from '../../src/core/skyline/terrain-skyline.ts';
import type { Result } from '../../src/core/units/result.ts';

export type TerrainBox = {
  readonly south: number;
  readonly west: number;
  readonly north: number;
  readonly east: number;
  readonly stepDeg: number;
  readonly columnStepDeg?: number;
};

/** A grid over a box in degrees, each sample's height asked of a function. */
export function terrainGrid(
  { south, west, north, east, stepDeg, columnStepDeg = stepDeg }: TerrainBox,
  heightM: (latitudeDeg: number, longitudeDeg: number) => number,
): ElevationGrid {
  const columns = Math.round((east - west) / columnStepDeg) + 1;
  const rows = Math.round((north - south) / stepDeg) + 1;
  const heights = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1)
      heights[row * columns + column] = heightM(
        north - row * stepDeg,
        west + column * columnStepDeg,
      );
  return {
    name: 'made for a test',
    lattice: 'degrees',
    west,
    north,
    columnStep: columnStepDeg,
    rowStep: stepDeg,
    columns,
    rows,
    rim: 0,
    heights,
    voidCount: 0,
    absurdCount: 0,
    filled: null,
  };
}

/** Drives the work to its end. */
export function skylineResult(question: TerrainQuestion): Result<TerrainSkyline, string> {
  const work = terrainSkyline(question);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

export function skylineOf(question: TerrainQuestion): TerrainSkyline {
  const result = skylineResult(question);
  if (!result.ok) throw new Error(result.problem);
  return result.value;
}

/** Hills of many sizes: sines from 20 km down to some 60 m, steeper than most real ground. */
export const hills =
  (roughness: number) =>
  (latitudeDeg: number, longitudeDeg: number): number => {
    let heightM = 900;
    let turnsPerDegree = 5.3;
    let sizeM = 420;
    for (let octave = 0; octave < 8; octave += 1) {
      const north = latitudeDeg * turnsPerDegree * 2 * Math.PI;
      const east = longitudeDeg * turnsPerDegree * 2 * Math.PI * 0.7;
      heightM +=
        sizeM *
        (Math.sin(north * 0.8 + east * 0.6 + octave) +
          Math.sin(north * 0.6 - east * 0.8 + 2 * octave)) *
        0.5;
      turnsPerDegree *= 2.31;
      sizeM *= roughness;
    }
    return heightM;
  };
