import type { Chromaticity, Matrix3 } from '../colour/chromaticity.ts';
import { applied, xyzOf } from '../colour/chromaticity.ts';
import type { Direction } from '../units/direction.ts';
import { projection, type Framing } from './framing.ts';

/** Directions over the picture: nodes from its left upper corner to its right lower one. */
export type SkyLattice = {
  readonly columns: number;
  readonly rows: number;
  /** Linear RGB of each node, three numbers, row by row; not clipped. */
  readonly linearRgb: Float32Array;
};

/** Cells across and down; between nodes linear light is straight. */
export const LATTICE_CELLS = { across: 120, down: 80 } as const;

/** Below the horizon the sky's edge value stays. */
const AT_HORIZON_DEG = 0.05;

/**
 * The sky of a framing as linear RGB, `linearPerCdM2` times luminance in the camera's colours.
 * An upright picture has its cells swapped.
 */
export function skyLattice(sky: {
  readonly framing: Framing;
  readonly luminanceTowards: (direction: Direction) => number;
  readonly colourTowards: (direction: Direction) => Chromaticity;
  readonly cameraMatrix: Matrix3;
  readonly linearPerCdM2: number;
  readonly cells?: { readonly across: number; readonly down: number };
}): SkyLattice {
  const { across, down } = sky.cells ?? cellsFor(sky.framing);
  const { toDirection } = projection(sky.framing);
  const [columns, rows] = [across + 1, down + 1];
  const linearRgb = new Float32Array(columns * rows * 3);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const seen = toDirection({
        xFraction: column / across - 0.5,
        yFraction: 0.5 - row / down,
      });
      const direction = { ...seen, altitudeDeg: Math.max(AT_HORIZON_DEG, seen.altitudeDeg) };
      const luminance = sky.luminanceTowards(direction) * sky.linearPerCdM2;
      linearRgb.set(
        applied(sky.cameraMatrix, xyzOf(sky.colourTowards(direction), luminance)),
        3 * (row * columns + column),
      );
    }
  return { columns, rows, linearRgb };
}

const cellsFor = (framing: Framing): { readonly across: number; readonly down: number } =>
  framing.sensorHeightMm > framing.sensorWidthMm
    ? { across: LATTICE_CELLS.down, down: LATTICE_CELLS.across }
    : LATTICE_CELLS;
