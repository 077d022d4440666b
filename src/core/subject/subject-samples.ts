import { gaussLegendre, onSpan } from '../sky/gauss-legendre.ts';
import { skylineAltitude, type Skyline } from '../skyline/skyline.ts';
import { cosDeg, radFromDeg, sinDeg } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';

export type SubjectScene = {
  readonly skyline: Skyline;
  /** Azimuth from the subject to the camera. */
  readonly facingDeg: number;
};

/**
 * Directions over the skyline in which a subject is lit by the sky. Times luminance, summed, each
 * weight gives the illuminance of level ground, of a plane facing the camera, or on a dome.
 */
export type SubjectSamples = {
  readonly scene: SubjectScene;
  readonly skylineAltitude: (azimuthDeg: number) => number;
  readonly directions: readonly Direction[];
  readonly groundWeight: Float64Array;
  readonly planeWeight: Float64Array;
  readonly domeWeight: Float64Array;
  /** The same weights of every direction that is not sky, the lower half included. */
  readonly planeWeightOfRest: number;
  readonly domeWeightOfRest: number;
};

/** A multiple of 4, so that the edge of what the plane sees falls between two columns. */
const COLUMNS = 52;
const ROWS = 12;
const SKYLINE_LOOKS = 8;

export const subjectSamples = (scene: SubjectScene): SubjectSamples => {
  const altitudeOf = skylineAltitude(scene.skyline);
  const rows = gaussLegendre(ROWS);
  const widthDeg = 360 / COLUMNS;
  const directions: Direction[] = [];
  const groundWeight: number[] = [];
  const planeWeight: number[] = [];
  const domeWeight: number[] = [];

  for (let column = 0; column < COLUMNS; column += 1) {
    const fromFacingDeg = (column + 0.5) * widthDeg;
    const azimuthDeg = scene.facingDeg + fromFacingDeg;
    const edgeDeg = meanAltitude(altitudeOf, azimuthDeg, widthDeg);
    const meanCosine = (cosDeg(fromFacingDeg) * sinDeg(widthDeg / 2)) / radFromDeg(widthDeg / 2);
    const { nodes, weights } = onSpan(rows, edgeDeg, 90);
    nodes.forEach((altitudeDeg, row) => {
      const solidAngleSr =
        radFromDeg(widthDeg) * radFromDeg(weights[row] ?? NaN) * cosDeg(altitudeDeg);
      const cosineFromAxis = cosDeg(altitudeDeg) * meanCosine;
      directions.push({ azimuthDeg, altitudeDeg });
      groundWeight.push(solidAngleSr * sinDeg(altitudeDeg));
      planeWeight.push(solidAngleSr * Math.max(0, cosineFromAxis));
      domeWeight.push((solidAngleSr * (1 + cosineFromAxis)) / 2);
    });
  }
  return {
    scene,
    skylineAltitude: altitudeOf,
    directions,
    groundWeight: Float64Array.from(groundWeight),
    planeWeight: Float64Array.from(planeWeight),
    domeWeight: Float64Array.from(domeWeight),
    // Surroundings of even luminance L give π L on a plane and 2π L on a dome.
    planeWeightOfRest: radFromDeg(180) - sum(planeWeight),
    domeWeightOfRest: radFromDeg(360) - sum(domeWeight),
  };
};

/** Of the skyline, nowhere under the level, across a column of the sky. */
const meanAltitude = (
  altitudeOf: (azimuthDeg: number) => number,
  azimuthDeg: number,
  widthDeg: number,
): number =>
  sum(
    Array.from({ length: SKYLINE_LOOKS }, (_, look) =>
      Math.max(0, altitudeOf(azimuthDeg + widthDeg * ((look + 0.5) / SKYLINE_LOOKS - 0.5))),
    ),
  ) / SKYLINE_LOOKS;

const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0);
