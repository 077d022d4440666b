import { ev100FromLuminance } from '../../../core/exposure/exposure-value.ts';
import { projectedFraming } from '../../../core/plan/picture-geometry.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { projection, type PicturePoint } from '../../../core/sky/framing.ts';
import { luminanceTowards, skyField } from '../../../core/sky/sky-field.ts';
import type { SkyModel } from '../../../core/sky/sky-model.ts';
import { skylineAltitude } from '../../../core/skyline/skyline.ts';
import type { Recipe } from '../../../core/strobe/recipe.ts';
import { radFromDeg } from '../../../core/units/angle.ts';
import { SUN_RADIUS_DEG } from '../../../core/sun-moon/sun-disc.ts';
import { stopLevel, stopTone } from '../../charts/stop-tone.ts';
import { drawFigures } from './draw-figures.ts';

type Picture = {
  readonly view: SetupView;
  readonly recipe: Recipe;
  /** Of the scene's sky condition. */
  readonly model: SkyModel;
  readonly width: number;
  readonly height: number;
};

/** Cells of sky across the picture; between them the tone is smooth. */
const CELLS_ACROSS = 72;

/** Sky, ground and figures in the tones that the recipe's settings make of them. */
export function drawFrame(context: CanvasRenderingContext2D, picture: Picture): void {
  const { view, recipe, width, height } = picture;
  const at: At = ({ xFraction, yFraction }) => [
    (0.5 + xFraction) * width,
    (0.5 - yFraction) * height,
  ];
  context.clearRect(0, 0, width, height);
  drawSky(context, picture);
  drawSun(context, view, at);
  drawGround(context, picture, at);
  drawFigures(context, { view, recipe, at });
  drawPatch(context, picture);
}

type At = (point: PicturePoint) => readonly [x: number, y: number];

function drawSky(context: CanvasRenderingContext2D, picture: Picture): void {
  const { view, recipe, model, width, height } = picture;
  const field = skyField(model, view.light);
  const columns = CELLS_ACROSS;
  const rows = Math.max(1, Math.round((CELLS_ACROSS * height) / width));
  const { toDirection } = projection(projectedFraming(view.framing));
  const cells = new ImageData(columns, rows);
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const { azimuthDeg, altitudeDeg } = toDirection({
        xFraction: (column + 0.5) / columns - 0.5,
        yFraction: 0.5 - (row + 0.5) / rows,
      });
      // The ground is drawn over what lies below the horizon.
      const luminance = luminanceTowards(field, {
        azimuthDeg,
        altitudeDeg: Math.max(0, altitudeDeg),
      });
      const level = stopLevel(ev100FromLuminance(luminance) - recipe.cameraEv);
      cells.data.set([level, level, level, 255], 4 * (row * columns + column));
    }
  }
  const small = new OffscreenCanvas(columns, rows);
  small.getContext('2d')?.putImageData(cells, 0, 0);
  context.imageSmoothingEnabled = true;
  context.imageSmoothingQuality = 'high';
  context.drawImage(small, 0, 0, width, height);
}

function drawSun(context: CanvasRenderingContext2D, view: SetupView, at: At): void {
  if (view.light.skyInFrame?.sunInFrame !== true) return;
  const { azimuthDeg, apparentAltitudeDeg } = view.light.sun;
  const { toPicture } = projection(projectedFraming(view.framing));
  const centre = toPicture({ azimuthDeg, altitudeDeg: apparentAltitudeDeg });
  const edge = toPicture({ azimuthDeg, altitudeDeg: apparentAltitudeDeg + SUN_RADIUS_DEG });
  if (centre === null || edge === null) return;
  const [x, y] = at(centre);
  context.fillStyle = stopTone(Infinity);
  context.beginPath();
  context.arc(x, y, Math.max(1.5, Math.abs(at(edge)[1] - y)), 0, 2 * Math.PI);
  context.fill();
}

const GROUND_STEP_DEG = 0.5;

/** Everything below the skyline has the luminance that light and reflectance give it. */
function drawGround(context: CanvasRenderingContext2D, picture: Picture, at: At): void {
  const { view, recipe, width, height } = picture;
  const { groundReflectance, skyline } = view.scene;
  const luminance = (groundReflectance * view.light.subject.groundLux) / radFromDeg(180);
  const edge = skylineAltitude(skyline);
  const { toPicture } = projection(projectedFraming(view.framing));
  context.fillStyle = stopTone(ev100FromLuminance(luminance) - recipe.cameraEv);
  context.beginPath();
  context.moveTo(-width, 3 * height);
  for (let turnDeg = -80; turnDeg <= 80; turnDeg += GROUND_STEP_DEG) {
    const azimuthDeg = view.framing.bearingDeg + turnDeg;
    const point = toPicture({ azimuthDeg, altitudeDeg: Math.max(0, edge(azimuthDeg)) });
    if (point !== null) context.lineTo(...at(point));
  }
  context.lineTo(2 * width, 3 * height);
  context.closePath();
  context.fill();
}

function drawPatch(context: CanvasRenderingContext2D, { view, width, height }: Picture): void {
  const { patch } = view.light;
  if (patch === null) return;
  context.strokeStyle = stopTone(Infinity);
  context.lineWidth = 2;
  context.setLineDash([6, 4]);
  context.strokeRect(
    (0.5 + patch.xFraction - patch.widthFraction / 2) * width,
    (0.5 - patch.yFraction - patch.heightFraction / 2) * height,
    patch.widthFraction * width,
    patch.heightFraction * height,
  );
  context.setLineDash([]);
}
