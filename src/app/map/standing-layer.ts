import type { ObstacleKind } from '../../core/plan/obstacle-schema.ts';
import { GroundCanvas, type GroundPainter, type GroundView } from './ground-canvas.ts';
import { placingOf, type GroundShapes } from './ground-shapes.ts';

export type StandingLook = {
  readonly shapes: GroundShapes;
  readonly ink: string;
  /** Drawn stronger. */
  readonly chosenKey: string | null;
};

type Stroke = { readonly widthPx: number; readonly dash: readonly number[]; readonly fill: number };

/** Told apart by fill and edge, not by colour. */
const STROKES: Readonly<Record<ObstacleKind, Stroke>> = {
  building: { widthPx: 1, dash: [], fill: 0.5 },
  wall: { widthPx: 3, dash: [], fill: 0.3 },
  trees: { widthPx: 1.5, dash: [2, 2.5], fill: 0.2 },
};

/** Of the map's ink. */
const EDGE = 0.7;
const LEAST_PX = 1;

/** What stands on the ground: buildings full, trees light with a dotted edge, walls as lines. */
export const paintStanding: GroundPainter<StandingLook> = (context, view, look) => {
  const { shapes, ink, chosenKey } = look;
  context.lineJoin = 'round';
  for (const [kind, stroke] of Object.entries(STROKES)) {
    const which = shapes.outlines.flatMap((outline, index) =>
      outline.kind === kind && outline.key !== chosenKey ? [index] : [],
    );
    context.beginPath();
    for (const index of which)
      if (shapes.outlines[index]?.closed) addOutline(context, shapes, index, view);
    context.globalAlpha = stroke.fill;
    context.fillStyle = ink;
    context.fill('nonzero');
    for (const index of which)
      if (!shapes.outlines[index]?.closed) addOutline(context, shapes, index, view);
    context.globalAlpha = EDGE;
    context.setLineDash([...stroke.dash]);
    context.lineWidth = stroke.widthPx;
    context.strokeStyle = ink;
    context.stroke();
  }
  context.globalAlpha = 1;
  const chosen = shapes.outlines.findIndex(({ key }) => key === chosenKey);
  if (chosen < 0) return;
  context.beginPath();
  addOutline(context, shapes, chosen, view);
  context.setLineDash([]);
  context.lineWidth = 3;
  context.strokeStyle = ink;
  context.stroke();
};

function addOutline(
  context: CanvasRenderingContext2D,
  shapes: GroundShapes,
  index: number,
  view: GroundView,
): void {
  const { scale, offsetX, offsetY } = placingOf(shapes, index, view);
  const left = (shapes.box[index * 4] ?? 0) * scale + offsetX;
  const top = (shapes.box[index * 4 + 1] ?? 0) * scale + offsetY;
  const right = (shapes.box[index * 4 + 2] ?? 0) * scale + offsetX;
  const bottom = (shapes.box[index * 4 + 3] ?? 0) * scale + offsetY;
  if (right < 0 || bottom < 0 || left > view.widthPx || top > view.heightPx) return;
  if (right - left < LEAST_PX && bottom - top < LEAST_PX) {
    context.rect(left, top, LEAST_PX, LEAST_PX);
    return;
  }
  const closed = shapes.outlines[index]?.closed === true;
  const lastRing = shapes.outlineRing[index + 1] ?? 0;
  for (let ring = shapes.outlineRing[index] ?? 0; ring < lastRing; ring += 1) {
    const start = shapes.ringStart[ring] ?? 0;
    const end = shapes.ringStart[ring + 1] ?? 0;
    // Back to the first corner by a line: closing many rings of one path is slow.
    for (let step = 0; step < end - start + (closed ? 1 : 0); step += 1) {
      const corner = start + (step % (end - start));
      const x = (shapes.x[corner] ?? 0) * scale + offsetX;
      const y = (shapes.y[corner] ?? 0) * scale + offsetY;
      if (step === 0) context.moveTo(x, y);
      else context.lineTo(x, y);
    }
  }
}

export const makeStandingLayer = (): GroundCanvas<StandingLook> =>
  new GroundCanvas(paintStanding, { className: 'ground-standing', mostDensity: 2 });

export const drawStandingLayer = (layer: GroundCanvas<StandingLook>, look: StandingLook): void =>
  layer.show(look);
