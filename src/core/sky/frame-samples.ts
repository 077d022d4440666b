import type { Skyline } from '../skyline/skyline.ts';
import { wrapDeg180 } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import { type Framing, isInsidePicture } from './framing.ts';
import type { Patch } from './patch.ts';
import {
  borderPoints,
  gridPoints,
  patchRectangle,
  type PictureGrid,
  type PictureRectangle,
  WHOLE_PICTURE,
} from './picture-rectangle.ts';
import {
  type FrameScene,
  frameScene,
  JUST_ABOVE_DEG,
  type SkyCell,
  skyCells,
} from './sky-cells.ts';

/**
 * Directions at which a sky is looked at to read it in a frame. In order: first the sky
 * cells of the frame, then points on the edge of its sky, then the sky cells of the patch.
 */
export type FrameSamples = {
  readonly scene: FrameScene;
  readonly directions: readonly Direction[];
  /** Of each cell's sky, as a fraction of the picture; 0 for the points on the edge. */
  readonly areaFraction: Float64Array;
  readonly frameCells: number;
  readonly edgePoints: number;
  readonly patchCells: number;
};

export type FrameInput = {
  readonly framing: Framing;
  readonly skyline: Skyline;
};

const SKY_CELLS = 740;
const ENOUGH_SKY_CELLS = 700;
/** Where sky and ground are so entangled that the wanted number would take more. */
const MOST_CELLS = 4 * SKY_CELLS;
const PATCH_GRID = { columns: 8, rows: 8 } as const;
const COARSE = { columns: 24, rows: 16 } as const;
const FINE_BORDER = { columns: 72, rows: 48 } as const;
const BORDER = { columns: 18, rows: 12 } as const;
const SKYLINE_POINTS = 60;

/** Without a patch; null when the frame shows no sky. */
export const frameSamples = ({ framing, skyline }: FrameInput): FrameSamples | null => {
  const scene = frameScene(framing, skyline);
  const frameCells = cellsOfFrame(scene, framing);
  if (frameCells.length === 0) return null;
  const edge = [...skyOnBorder(scene), ...skylinePoints(scene, framing, skyline)];
  return {
    scene,
    ...columnsOf([...frameCells, ...edge.map(withoutArea)]),
    frameCells: frameCells.length,
    edgePoints: edge.length,
    patchCells: 0,
  };
};

/** The same frame, read with a patch of it. */
export const withPatch = (samples: FrameSamples, patch: Patch | null | undefined): FrameSamples => {
  const rectangle = patch === undefined || patch === null ? null : patchRectangle(patch);
  if (rectangle === null) return samples;
  const cells = columnsOf(skyCells(samples.scene, rectangle, PATCH_GRID));
  const areaFraction = new Float64Array(samples.areaFraction.length + cells.areaFraction.length);
  areaFraction.set(samples.areaFraction);
  areaFraction.set(cells.areaFraction, samples.areaFraction.length);
  return {
    ...samples,
    directions: samples.directions.concat(cells.directions),
    areaFraction,
    patchCells: cells.directions.length,
  };
};

const columnsOf = (
  cells: readonly SkyCell[],
): Pick<FrameSamples, 'directions' | 'areaFraction'> => {
  const areaFraction = new Float64Array(cells.length);
  const directions = cells.map(({ direction, areaFraction: area }, at) => {
    areaFraction[at] = area;
    return direction;
  });
  return { directions, areaFraction };
};

const withoutArea = (direction: Direction): SkyCell => ({ direction, areaFraction: 0 });

/** Finer and finer, until the wanted number of cells is sky. */
const cellsOfFrame = (scene: FrameScene, framing: Framing): readonly SkyCell[] => {
  const box = skyBox(scene);
  if (box === null) return [];
  let wanted = SKY_CELLS / box.skyShare;
  for (;;) {
    const cells = skyCells(scene, box.rectangle, gridOver(box.rectangle, framing, wanted));
    if (cells.length >= ENOUGH_SKY_CELLS || wanted >= MOST_CELLS) return cells;
    wanted = Math.min(MOST_CELLS, (wanted * SKY_CELLS) / Math.max(1, cells.length));
  }
};

type SkyBox = {
  readonly rectangle: PictureRectangle;
  /** Of the rectangle, by a coarse look. */
  readonly skyShare: number;
};

/** The part of the picture that holds all its sky, a coarse cell larger than seen. */
const skyBox = (scene: FrameScene): SkyBox | null => {
  const { columns, rows } = COARSE;
  const inside = gridPoints(WHOLE_PICTURE, COARSE).filter(scene.isSkyAt);
  // Above any sky there is sky again, up to the border: no piece is missed for being narrow.
  const onBorder = borderPoints(WHOLE_PICTURE, FINE_BORDER).filter(scene.isSkyAt);
  if (onBorder.length === 0) return null;
  const xFractions = [...inside, ...onBorder].map((point) => point.xFraction);
  const yFractions = [...inside, ...onBorder].map((point) => point.yFraction);
  const rectangle = {
    left: Math.max(-0.5, Math.min(...xFractions) - 1 / columns),
    right: Math.min(0.5, Math.max(...xFractions) + 1 / columns),
    bottom: Math.max(-0.5, Math.min(...yFractions) - 1 / rows),
    top: Math.min(0.5, Math.max(...yFractions) + 1 / rows),
  };
  const looks =
    ((rectangle.right - rectangle.left) * columns + 1) *
    ((rectangle.top - rectangle.bottom) * rows + 1);
  return { rectangle, skyShare: Math.max(SKY_CELLS / MOST_CELLS, inside.length / looks) };
};

/** Square cells on the sensor. */
const gridOver = (rectangle: PictureRectangle, framing: Framing, cells: number): PictureGrid => {
  const aspect =
    ((rectangle.right - rectangle.left) * framing.sensorWidthMm) /
    ((rectangle.top - rectangle.bottom) * framing.sensorHeightMm);
  const columns = Math.max(1, Math.round(Math.sqrt(cells * aspect)));
  return { columns, rows: Math.ceil(cells / columns) };
};

const skyOnBorder = (scene: FrameScene): readonly Direction[] =>
  borderPoints(WHOLE_PICTURE, BORDER).map(scene.toDirection).filter(scene.isSky);

/** The skyline inside the picture: its corners and points evenly between them. */
const skylinePoints = (
  scene: FrameScene,
  framing: Framing,
  skyline: Skyline,
): readonly Direction[] => {
  const reachDeg = azimuthReachDeg(scene, framing);
  const evenly = Array.from(
    { length: SKYLINE_POINTS + 1 },
    (_, at) => framing.bearingDeg + reachDeg * ((2 * at) / SKYLINE_POINTS - 1),
  );
  return [...evenly, ...skyline.map((point) => point.azimuthDeg)].flatMap((azimuthDeg) => {
    const altitudeDeg = Math.max(0, scene.skylineAltitude(azimuthDeg)) + JUST_ABOVE_DEG;
    const point = scene.toPicture({ azimuthDeg, altitudeDeg });
    return point !== null && isInsidePicture(point) ? [{ azimuthDeg, altitudeDeg }] : [];
  });
};

/** How far to each side of its bearing the picture shows anything above the level. */
const azimuthReachDeg = (scene: FrameScene, framing: Framing): number => {
  const zenith = scene.toPicture({ azimuthDeg: framing.bearingDeg, altitudeDeg: 90 });
  if (zenith !== null && isInsidePicture(zenith)) return 180;
  const offsets = borderPoints(WHOLE_PICTURE, BORDER)
    .map(scene.toDirection)
    .filter((direction) => direction.altitudeDeg > 0)
    .map((direction) => Math.abs(wrapDeg180(direction.azimuthDeg - framing.bearingDeg)));
  return Math.max(0, ...offsets);
};
