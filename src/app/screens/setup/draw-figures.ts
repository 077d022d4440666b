import { projectedFraming } from '../../../core/plan/picture-geometry.ts';
import { facePositionsM } from '../../../core/plan/row-of-faces.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { projection, type PicturePoint } from '../../../core/sky/framing.ts';
import type { Recipe } from '../../../core/strobe/recipe.ts';
import { atan2Deg } from '../../../core/units/angle.ts';
import { stopTone } from '../../charts/stop-tone.ts';

type Figures = {
  readonly view: SetupView;
  readonly recipe: Recipe;
  readonly at: (point: PicturePoint) => readonly [x: number, y: number];
};

const HEAD_HALF_WIDTH_M = 0.08;
const HEAD_HALF_HEIGHT_M = 0.12;
const SHOULDER_HALF_WIDTH_M = 0.22;
const SHOULDER_BELOW_FACE_M = 0.3;

/** Plain silhouettes of grey card: one half in the key's tone, the other in the fill's or the unlit face's. */
export function drawFigures(
  context: CanvasRenderingContext2D,
  { view, recipe, at }: Figures,
): void {
  const { framing, setup, sources } = view;
  const { toPicture } = projection(projectedFraming(framing));
  const key = sources.find(({ light }) => light.role === 'key');
  const tones = {
    lit: stopTone(key === undefined ? recipe.unlitStops : recipe.keyStops),
    dark: stopTone(recipe.fillStops ?? recipe.unlitStops),
  };
  const keyIsRight = (key?.light.angleDeg ?? 0) >= 0;
  for (const faceM of facePositionsM(setup)) {
    const point = (rightM: number, heightM: number): readonly [x: number, y: number] | null => {
      const levelM = Math.hypot(faceM + rightM, framing.cameraDistanceM);
      const picture = toPicture({
        azimuthDeg: framing.bearingDeg + atan2Deg(faceM + rightM, framing.cameraDistanceM),
        altitudeDeg: atan2Deg(heightM - framing.cameraHeightM, levelM),
      });
      return picture === null ? null : at(picture);
    };
    const face = point(0, setup.faceHeightM);
    const side = point(HEAD_HALF_WIDTH_M, setup.faceHeightM);
    const top = point(0, setup.faceHeightM + HEAD_HALF_HEIGHT_M);
    if (face === null || side === null || top === null) continue;
    const half = (right: boolean): void => {
      const way = right ? 1 : -1;
      context.fillStyle = right === keyIsRight ? tones.lit : tones.dark;
      fillBody(context, way, point, setup.faceHeightM);
      context.beginPath();
      context.ellipse(
        face[0],
        face[1],
        Math.abs(side[0] - face[0]),
        Math.abs(top[1] - face[1]),
        0,
        right ? -Math.PI / 2 : Math.PI / 2,
        right ? Math.PI / 2 : (3 * Math.PI) / 2,
      );
      context.fill();
    };
    half(true);
    half(false);
  }
}

function fillBody(
  context: CanvasRenderingContext2D,
  way: 1 | -1,
  point: (rightM: number, heightM: number) => readonly [x: number, y: number] | null,
  faceHeightM: number,
): void {
  const corners = [
    point(0, faceHeightM),
    point(way * 0.05, faceHeightM - 0.1),
    point(way * 0.06, faceHeightM - 0.18),
    point(way * SHOULDER_HALF_WIDTH_M * 0.9, faceHeightM - SHOULDER_BELOW_FACE_M + 0.05),
    point(way * SHOULDER_HALF_WIDTH_M, faceHeightM - SHOULDER_BELOW_FACE_M - 0.05),
    point(way * SHOULDER_HALF_WIDTH_M, 0),
    point(0, 0),
  ];
  context.beginPath();
  for (const corner of corners) if (corner !== null) context.lineTo(...corner);
  context.closePath();
  context.fill();
}
