import { arccos, arcsin, arctan2, cos, cosBetween, sin, type Toward } from './degrees.ts';
import type { SkyThere } from './sky.ts';

/** A camera: sides of the picture as it is held, degrees and millimetres. */
export type CameraThere = {
  readonly bearing: number;
  readonly tilt: number;
  readonly focal: number;
  readonly width: number;
  readonly height: number;
};

/** Fractions of the picture's width and height from its centre, right and up positive. */
export type PointThere = { readonly right: number; readonly up: number };

export type FrameThere = {
  readonly min: number;
  readonly dark: number;
  readonly mean: number;
  readonly bright: number;
  readonly max: number;
  readonly patch: number | null;
  readonly skyShare: number;
  readonly sunInFrame: boolean;
  readonly patchCentre: PointThere | null;
};

/** Luminance to EV at ISO 100, K 12.5 (ISO 2720). */
export const evOfLuminance = (cdM2: number): number => Math.log2((cdM2 * 100) / 12.5);

const COLUMNS = 720;
const ROWS = 480;
const PATCH = 0.1;
const PATCH_STEP = 0.05;

/** Where a direction falls in the picture of a lens that keeps straight lines; null behind it. */
export function pointOf(camera: CameraThere, toward: Toward): PointThere | null {
  const { ahead, across, over } = alongCamera(camera, toward);
  if (ahead <= 0) return null;
  return {
    right: (across / ahead) * (camera.focal / camera.width),
    up: (over / ahead) * (camera.focal / camera.height),
  };
}

function alongCamera(
  { bearing, tilt }: CameraThere,
  { azimuth, altitude }: Toward,
): { ahead: number; across: number; over: number } {
  const level = cos(altitude) * cos(azimuth - bearing);
  return {
    ahead: level * cos(tilt) + sin(altitude) * sin(tilt),
    across: cos(altitude) * sin(azimuth - bearing),
    over: sin(altitude) * cos(tilt) - level * sin(tilt),
  };
}

/** The direction that a point of the picture shows. */
export function towardOf(
  { bearing, tilt, focal, width, height }: CameraThere,
  at: PointThere,
): Toward {
  const across = at.right * width;
  const over = at.up * height;
  const level = focal * cos(tilt) - over * sin(tilt);
  const rise = focal * sin(tilt) + over * cos(tilt);
  return {
    azimuth: bearing + arctan2(across, level),
    altitude: arcsin(rise / Math.hypot(across, over, focal)),
  };
}

/** The frame pixel by pixel: every pixel one equal piece of picture area. */
export function frameThere(
  camera: CameraThere,
  skyline: (azimuth: number) => number,
  sky: SkyThere,
  sun: Toward,
  head: PointThere,
): FrameThere {
  const pixels = new Float64Array(COLUMNS * ROWS).fill(NaN);
  for (let row = 0; row < ROWS; row += 1)
    for (let column = 0; column < COLUMNS; column += 1) {
      const toward = towardOf(camera, {
        right: (column + 0.5) / COLUMNS - 0.5,
        up: (row + 0.5) / ROWS - 0.5,
      });
      if (toward.altitude > Math.max(0, skyline(toward.azimuth)))
        pixels[row * COLUMNS + column] = sky(toward);
    }
  const lit = pixels.filter((cdM2) => !Number.isNaN(cdM2)).toSorted();
  const at = pointOf(camera, sun);
  const sunInFrame =
    at !== null &&
    Math.abs(at.right) <= 0.5 &&
    Math.abs(at.up) <= 0.5 &&
    sun.altitude > Math.max(0, skyline(sun.azimuth));
  const quantile = (share: number): number => lit[Math.floor(share * lit.length)] ?? NaN;
  const patchCentre = defaultPatch(pixels, head, sin(sun.azimuth - camera.bearing) < 0);
  return {
    min: evOfLuminance(lit[0] ?? NaN),
    dark: evOfLuminance(quantile(0.05)),
    mean: evOfLuminance(mean(lit)),
    bright: evOfLuminance(quantile(0.95)),
    max: evOfLuminance(Math.max(lit.at(-1) ?? NaN, sunInFrame ? sky(sun) : 0)),
    patch: patchCentre === null ? null : evOfLuminance(mean(inPatch(pixels, patchCentre))),
    skyShare: lit.length / pixels.length,
    sunInFrame,
    patchCentre,
  };
}

const mean = (values: Float64Array | readonly number[]): number => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
};

/** A quarter of the width from the head on the side away from the sun, raised until half is sky. */
function defaultPatch(
  pixels: Float64Array,
  head: PointThere,
  sunIsLeft: boolean,
): PointThere | null {
  const beside = head.right + (sunIsLeft ? 0.25 : -0.25);
  const right = Math.min(0.5 - PATCH / 2, Math.max(PATCH / 2 - 0.5, beside));
  for (let steps = 0; head.up + steps * PATCH_STEP <= 0.5 - PATCH / 2; steps += 1) {
    const centre = { right, up: head.up + steps * PATCH_STEP };
    if (inPatch(pixels, centre).length >= (PATCH * COLUMNS * PATCH * ROWS) / 2) return centre;
  }
  return null;
}

/** Luminance of the pixels of sky whose middle lies in the patch. */
function inPatch(pixels: Float64Array, centre: PointThere): readonly number[] {
  const found: number[] = [];
  for (let row = 0; row < ROWS; row += 1) {
    if (Math.abs((row + 0.5) / ROWS - 0.5 - centre.up) > PATCH / 2) continue;
    for (let column = 0; column < COLUMNS; column += 1) {
      if (Math.abs((column + 0.5) / COLUMNS - 0.5 - centre.right) > PATCH / 2) continue;
      const cdM2 = pixels[row * COLUMNS + column] ?? NaN;
      if (!Number.isNaN(cdM2)) found.push(cdM2);
    }
  }
  return found;
}

/** Where the middle face stands in the picture. */
export const headThere = (
  camera: CameraThere,
  metres: {
    readonly distance: number;
    readonly camera: number;
    readonly face: number;
    /** To the camera's right of the axis. */
    readonly across: number;
  },
): PointThere => {
  const rise = (metres.face - metres.camera) / metres.distance;
  const along = cos(camera.tilt) + rise * sin(camera.tilt);
  const over = rise * cos(camera.tilt) - sin(camera.tilt);
  return {
    right: (metres.across / metres.distance / along) * (camera.focal / camera.width),
    up: (over / along) * (camera.focal / camera.height),
  };
};

/** Degrees from the sun to the nearest of a rectangle's points. */
export function angleToSun(
  camera: CameraThere,
  rectangle: PointThere & { readonly size: number },
  sun: Toward,
): number {
  let nearest = 180;
  for (let row = 0; row <= 40; row += 1)
    for (let column = 0; column <= 40; column += 1) {
      const toward = towardOf(camera, {
        right: rectangle.right + (column / 40 - 0.5) * rectangle.size,
        up: rectangle.up + (row / 40 - 0.5) * rectangle.size,
      });
      nearest = Math.min(nearest, arccos(cosBetween(toward, sun)));
    }
  return nearest;
}
