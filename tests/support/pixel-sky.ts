/**
 * The sky in a frame by looking through every pixel of a 720 × 480 picture (480 × 720 upright),
 * written without any of the code under test.
 */
export type PixelFraming = {
  readonly bearingDeg: number;
  readonly tiltDeg: number;
  readonly focalLengthMm: number;
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
};

export type PixelPatch = {
  readonly xFraction: number;
  readonly yFraction: number;
  readonly widthFraction: number;
  readonly heightFraction: number;
};

type Toward = { readonly azimuthDeg: number; readonly altitudeDeg: number };

export type PixelReading = {
  readonly minEv: number;
  readonly darkEv: number;
  readonly meanEv: number;
  readonly brightEv: number;
  readonly maxEv: number;
  readonly patchEv: number;
  readonly skyShare: number;
  readonly patchPixels: number;
};

const RAD = Math.PI / 180;
const LONG_SIDE = 720;
const SHORT_SIDE = 480;
/** Luminance at EV 0, ISO 100, K 12.5 (ISO 2720). */
const CD_M2_AT_EV_0 = 0.125;

export const pixelSky = (scene: {
  readonly sky: (direction: Toward) => number;
  readonly framing: PixelFraming;
  readonly skyline: readonly Toward[];
  readonly patch?: PixelPatch;
}): PixelReading | null => {
  const { framing, sky, patch } = scene;
  const upright = framing.sensorHeightMm > framing.sensorWidthMm;
  const columns = upright ? SHORT_SIDE : LONG_SIDE;
  const rows = upright ? LONG_SIDE : SHORT_SIDE;
  const edge = edgeAltitude(scene.skyline);
  const tilt = framing.tiltDeg * RAD;
  const found = new Float64Array(columns * rows);
  let count = 0;
  let sum = 0;
  let patchSum = 0;
  let patchCount = 0;
  for (let row = 0; row < rows; row += 1) {
    const yFraction = 0.5 - (row + 0.5) / rows;
    for (let column = 0; column < columns; column += 1) {
      const xFraction = (column + 0.5) / columns - 0.5;
      // Camera axes: x right, y up, z along the lens; then a turn by the tilt about x.
      const x = xFraction * framing.sensorWidthMm;
      const y = yFraction * framing.sensorHeightMm;
      const z = framing.focalLengthMm;
      const up = y * Math.cos(tilt) + z * Math.sin(tilt);
      const ahead = z * Math.cos(tilt) - y * Math.sin(tilt);
      const altitudeDeg = Math.atan2(up, Math.hypot(x, ahead)) / RAD;
      if (altitudeDeg <= 0) continue;
      const azimuthDeg = (framing.bearingDeg + Math.atan2(x, ahead) / RAD + 720) % 360;
      if (altitudeDeg <= edge(azimuthDeg)) continue;
      const luminance = sky({ azimuthDeg, altitudeDeg });
      found[count] = luminance;
      count += 1;
      sum += luminance;
      if (
        patch !== undefined &&
        Math.abs(xFraction - patch.xFraction) <= patch.widthFraction / 2 &&
        Math.abs(yFraction - patch.yFraction) <= patch.heightFraction / 2
      ) {
        patchSum += luminance;
        patchCount += 1;
      }
    }
  }
  if (count === 0) return null;
  const sorted = found.subarray(0, count).toSorted();
  return {
    minEv: ev(sorted[0] ?? NaN),
    darkEv: ev(sorted[Math.floor(0.05 * count)] ?? NaN),
    meanEv: ev(sum / count),
    brightEv: ev(sorted[Math.floor(0.95 * count)] ?? NaN),
    maxEv: ev(sorted[count - 1] ?? NaN),
    patchEv: patchCount === 0 ? ev(sum / count) : ev(patchSum / patchCount),
    skyShare: count / (columns * rows),
    patchPixels: patchCount,
  };
};

const ev = (luminance: number): number => Math.log2(luminance / CD_M2_AT_EV_0);

/** Straight between its points, once round; flat at 0 without any. */
const edgeAltitude = (skyline: readonly Toward[]): ((azimuthDeg: number) => number) => {
  if (skyline.length === 0) return () => 0;
  const sorted = skyline.toSorted((one, other) => one.azimuthDeg - other.azimuthDeg);
  const table = Array.from({ length: 36_001 }, (_, step) => {
    const azimuthDeg = step / 100;
    const after = sorted.findIndex((point) => point.azimuthDeg > azimuthDeg);
    const to = sorted[after === -1 ? 0 : after] as Toward;
    const from = sorted[after <= 0 ? sorted.length - 1 : after - 1] as Toward;
    const width = (to.azimuthDeg - from.azimuthDeg + 360) % 360 || 360;
    const along = ((azimuthDeg - from.azimuthDeg + 360) % 360) / width;
    return from.altitudeDeg + along * (to.altitudeDeg - from.altitudeDeg);
  });
  return (azimuthDeg) => table[Math.round(azimuthDeg * 100)] as number;
};
