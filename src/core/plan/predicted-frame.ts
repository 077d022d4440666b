import type { Triple } from '../colour/chromaticity.ts';
import { graduatedStops, type Graduation } from '../colour/graduated-filter.ts';
import { cameraMatrix, type WhiteBalance } from '../colour/white-balance.ts';
import type { Daylight } from '../daylight/daylight-at.ts';
import type { SkyCondition } from '../daylight/sky-condition.ts';
import { luminanceFromEv100 } from '../exposure/exposure-value.ts';
import { projection, type Framing } from '../sky/framing.ts';
import { skyColour } from '../sky/sky-colour.ts';
import { luminanceTowards, skyField } from '../sky/sky-field.ts';
import { skyLattice } from '../sky/sky-lattice.ts';
import { skyModel } from '../sky/sky-model.ts';
import { skylineInPicture } from '../sky/skyline-in-picture.ts';
import type { Skyline } from '../skyline/skyline.ts';
import { skylineAltitude } from '../skyline/skyline.ts';
import type { SunPosition } from '../sun-moon/sun-position.ts';
import { SUN_RADIUS_DEG } from '../sun-moon/sun-disc.ts';
import { figureShapes, type LitFigure } from './figure-shapes.ts';
import {
  encodingTable,
  paintGround,
  paintSky,
  type Encoding,
  type FramePixels,
  type RowGains,
} from './frame-pixels.ts';
import { paintPolygon, type PixelPoint } from './paint-polygon.ts';

/** Linear light of the grey card under the key. [iso2720] */
export const MID_GREY = 0.18;

/** Everything a predicted frame is made of, plain data. */
export type FrameScene = {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly framing: Framing;
  readonly cameraHeightM: number;
  readonly condition: SkyCondition;
  readonly sun: SunPosition;
  readonly daylight: Pick<Daylight, 'diffuseHorizontalLux' | 'moonHorizontalLux'>;
  readonly skyline: Skyline;
  /** The settings, filters in them: what has this EV at ISO 100 is mid-grey. */
  readonly cameraEv: number;
  readonly whiteBalance: WhiteBalance;
  /** What the filters on the lens do to red, green and blue beside their stops. */
  readonly lensGains: Triple;
  readonly graduation: Graduation | null;
  /** Linear light of the ground, before the graduated filter. */
  readonly ground: Triple;
  /** The farthest first. */
  readonly figures: readonly LitFigure[];
};

/**
 * The picture that the settings make of sky, ground and lit figures: linear light, exposed, white
 * balanced, encoded once as sRGB with a hard clip. No cloud is drawn, no flare, no noise.
 */
export function predictedFrame(scene: FrameScene): FramePixels {
  const { widthPx, heightPx, framing } = scene;
  const pixels: FramePixels = {
    widthPx,
    heightPx,
    rgba: new Uint8ClampedArray(widthPx * heightPx * 4),
  };
  const encoding = encodingTable();
  const gains = rowGains(scene);
  const model = skyModel(scene.condition);
  const field = skyField(model, scene);
  const matrix = cameraMatrix(scene.whiteBalance);
  paintSky(
    pixels,
    skyLattice({
      framing,
      luminanceTowards: (direction) => luminanceTowards(field, direction),
      colourTowards: skyColour(scene.condition, scene.sun),
      cameraMatrix: [
        times(matrix[0], scene.lensGains[0]),
        times(matrix[1], scene.lensGains[1]),
        times(matrix[2], scene.lensGains[2]),
      ],
      linearPerCdM2: MID_GREY / luminanceFromEv100(scene.cameraEv),
    }),
    gains,
    encoding,
  );
  paintSun(pixels, scene, gains, encoding);
  const edgePx = skylineInPicture(framing, scene.skyline, scene);
  paintGround(pixels, { edgePx, colour: scene.ground }, gains, encoding);
  for (const figure of scene.figures)
    for (const { corners, colour } of figureShapes(figure, framing, scene.cameraHeightM))
      paintPolygon(
        pixels,
        corners.map(({ xFraction, yFraction }): PixelPoint => ({
          x: (0.5 + xFraction) * widthPx,
          y: (0.5 - yFraction) * heightPx,
        })),
        colour,
        gains,
        encoding,
      );
  return pixels;
}

const times = ([r, g, b]: Triple, factor: number): Triple => [r * factor, g * factor, b * factor];

function rowGains({ heightPx, graduation }: FrameScene): RowGains {
  return Float32Array.from({ length: heightPx }, (_, row) =>
    graduation === null ? 1 : 2 ** -graduatedStops(graduation, 0.5 - (row + 0.5) / heightPx),
  );
}

/** White where its centre stands over the skyline: it clips at any hold. */
function paintSun(
  pixels: FramePixels,
  { framing, sun, skyline, widthPx, heightPx }: FrameScene,
  gains: RowGains,
  encoding: Encoding,
): void {
  const { toPicture } = projection(framing);
  const altitudeDeg = sun.apparentAltitudeDeg;
  if (altitudeDeg + SUN_RADIUS_DEG < skylineAltitude(skyline)(sun.azimuthDeg)) return;
  const centre = toPicture({ azimuthDeg: sun.azimuthDeg, altitudeDeg });
  const top = toPicture({ azimuthDeg: sun.azimuthDeg, altitudeDeg: altitudeDeg + SUN_RADIUS_DEG });
  if (centre === null || top === null || altitudeDeg < -1) return;
  // At least what covers the pixel it stands in.
  const radius = Math.max(1.5, Math.abs(top.yFraction - centre.yFraction) * heightPx);
  const corners = Array.from({ length: 32 }, (_, step): PixelPoint => {
    const turn = (step / 32) * 2 * Math.PI;
    return {
      x: (0.5 + centre.xFraction) * widthPx + radius * Math.sin(turn),
      y: (0.5 - centre.yFraction) * heightPx + radius * Math.cos(turn),
    };
  });
  paintPolygon(pixels, corners, [1e4, 1e4, 1e4], gains, encoding);
}
