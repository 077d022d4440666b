import { sidesOf } from './box-sides.ts';
import { clipRing } from './clip-ring.ts';
import type { PixelBox } from './free-boxes.ts';
import { graticuleLines, graticuleStepDeg } from './graticule-step.ts';
import type { MapColours } from './map-colours.ts';
import type { FlatLine, FlatOutline } from './map-outline.ts';
import { latitudeAt, longitudeAt, mercatorX, mercatorY, WORLD_PX } from './web-mercator.ts';

export type TilePosition = { readonly x: number; readonly y: number; readonly z: number };

export type OutlineLook = {
  readonly outline: FlatOutline | null;
  readonly colours: MapColours;
};

/** Lines drawn on the edge of a tile need their other half on the next one. */
const MARGIN_PX = 3;

/** Draws land, borders and graticule of one 256 px tile; the sea is left clear. */
export const drawOutlineTile = (
  context: CanvasRenderingContext2D,
  { x, y, z }: TilePosition,
  { outline, colours }: OutlineLook,
): void => {
  const scale = 2 ** z;
  const margin = MARGIN_PX / scale;
  const side = WORLD_PX / scale;
  const box = {
    left: x * side - margin,
    top: y * side - margin,
    right: (x + 1) * side + margin,
    bottom: (y + 1) * side + margin,
  };
  const pen: Pen = { context, scale, left: x * side, top: y * side, box };
  if (outline) {
    const near = outline.polygons.filter((polygon) => touches(polygon.box, box));
    const rings = near.flatMap((polygon) => polygon.rings);
    context.fillStyle = colours.land;
    context.beginPath();
    for (const ring of rings) traceFilled(pen, ring);
    context.fill('evenodd');
    stroke(pen, rings, colours.coast, 1, 0.9);
    stroke(
      pen,
      outline.borders.filter((line) => touches(line.box, box)),
      colours.coast,
      1,
      0.5,
    );
  }
  drawGraticule(pen, z, colours.ink);
};

type Pen = {
  readonly context: CanvasRenderingContext2D;
  readonly scale: number;
  readonly left: number;
  readonly top: number;
  readonly box: PixelBox;
};

const touches = (one: PixelBox, other: PixelBox): boolean =>
  one.left <= other.right &&
  other.left <= one.right &&
  one.top <= other.bottom &&
  other.top <= one.bottom;

const traceFilled = ({ context, scale, left, top, box }: Pen, { points }: FlatLine): void => {
  const clipped = clipRing(points, box);
  for (let index = 0; index < clipped.length; index += 2) {
    const x = ((clipped[index] ?? 0) - left) * scale;
    const y = ((clipped[index + 1] ?? 0) - top) * scale;
    if (index === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
  context.closePath();
};

const stroke = (
  pen: Pen,
  lines: readonly FlatLine[],
  colour: string,
  widthPx: number,
  opacity: number,
): void => {
  const { context } = pen;
  context.beginPath();
  for (const line of lines) traceStroked(pen, line);
  context.strokeStyle = colour;
  context.lineWidth = widthPx;
  context.lineJoin = 'round';
  context.globalAlpha = opacity;
  context.stroke();
  context.globalAlpha = 1;
};

/** Only the parts that may cross the box, and never the seams along the edge of the world. */
const traceStroked = ({ context, scale, left, top, box }: Pen, { points }: FlatLine): void => {
  let drawing = false;
  for (let index = 2; index < points.length; index += 2) {
    const [x, y, nextX, nextY] = [
      points[index - 2] ?? 0,
      points[index - 1] ?? 0,
      points[index] ?? 0,
      points[index + 1] ?? 0,
    ];
    const seen =
      (sidesOf(x, y, box) & sidesOf(nextX, nextY, box)) === 0 &&
      !(x === nextX && onWorldEdge(x)) &&
      !(y === nextY && onWorldEdge(y));
    if (seen && !drawing) context.moveTo((x - left) * scale, (y - top) * scale);
    if (seen) context.lineTo((nextX - left) * scale, (nextY - top) * scale);
    drawing = seen;
  }
};

/** In any copy of the world. */
const onWorldEdge = (coordinate: number): boolean => coordinate % WORLD_PX === 0;

const drawGraticule = ({ context, scale, left, top, box }: Pen, z: number, ink: string): void => {
  const stepDeg = graticuleStepDeg(z);
  const [west, east] = [longitudeAt(box.left), longitudeAt(box.right)];
  const [south, north] = [latitudeAt(box.bottom), latitudeAt(box.top)];
  context.beginPath();
  for (const longitudeDeg of graticuleLines({ fromDeg: west, toDeg: east, stepDeg })) {
    const x = Math.round((mercatorX(longitudeDeg) - left) * scale) + 0.5;
    context.moveTo(x, 0);
    context.lineTo(x, WORLD_PX);
  }
  for (const latitudeDeg of graticuleLines({ fromDeg: south, toDeg: north, stepDeg })) {
    const y = Math.round((mercatorY(latitudeDeg) - top) * scale) + 0.5;
    context.moveTo(0, y);
    context.lineTo(WORLD_PX, y);
  }
  context.strokeStyle = ink;
  context.globalAlpha = 0.09;
  context.lineWidth = 1;
  context.stroke();
  context.globalAlpha = 1;
};
