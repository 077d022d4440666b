import { daylightAt } from '../daylight/daylight-at.ts';
import type { SkyCondition } from '../daylight/sky-condition.ts';
import { ev100FromLuminance } from '../exposure/exposure-value.ts';
import type { GeoPoint } from '../place/geo-point.ts';
import { luminancesTowards, type Sky } from '../sky/condition-sky.ts';
import { fillLuminance, skyField } from '../sky/sky-field.ts';
import { skyModel, skyPoints } from '../sky/sky-model.ts';
import { skylineAltitude, type Skyline } from '../skyline/skyline.ts';
import { moonPosition } from '../sun-moon/moon-position.ts';
import { sunPosition } from '../sun-moon/sun-position.ts';
import { cosDeg } from '../units/angle.ts';
import type { Direction } from '../units/direction.ts';
import type { SpotInstant } from './spot-light.ts';

/** Width of a sector; the first is centred on north. */
export const SKY_RING_STEP_DEG = 5;
const SECTORS = 360 / SKY_RING_STEP_DEG;
const FROM_DEG = 8;
const TO_DEG = 20;
const ROWS = 6;
const COLUMNS = 2;

/**
 * EV at ISO 100 of the mean luminance of the low sky, 8° to 20° up, in 72 sectors clockwise from
 * north; only what is above the skyline counts, NaN where nothing is.
 */
export const skyRing = (spot: { readonly sky: Sky; readonly skyline: Skyline }): Float64Array => {
  const samples = ringSamples(spot.skyline);
  return sectorMeans(samples, luminancesTowards(spot.sky, samples.directions));
};

/** The ring of a spot as a function of time. What does not change with the sun is worked out once. */
export const skyRingReader = (spot: {
  readonly place: GeoPoint;
  readonly skyline: Skyline;
  readonly condition: SkyCondition;
}): ((instant: SpotInstant) => Float64Array) => {
  const { place, condition } = spot;
  const samples = ringSamples(spot.skyline);
  const model = skyModel(condition);
  const points = skyPoints(model.standard, samples.directions);
  const luminanceCdM2 = new Float64Array(samples.directions.length);
  return ({ instantMs, dayOfYear }) => {
    const sun = sunPosition(instantMs, place);
    const moon = sun.trueAltitudeDeg < 0 ? moonPosition(instantMs, place) : undefined;
    const elevationM = place.elevationM ?? 0;
    const daylight = daylightAt({ sun, condition, dayOfYear, elevationM, moon });
    fillLuminance(skyField(model, { sun, daylight }), points, luminanceCdM2);
    return sectorMeans(samples, luminanceCdM2);
  };
};

type RingSamples = {
  readonly directions: readonly Direction[];
  /** The sector of each direction. */
  readonly sector: readonly number[];
  /** Solid angle of each direction, in any unit. */
  readonly weight: readonly number[];
};

const ringSamples = (skyline: Skyline): RingSamples => {
  const altitudeOf = skylineAltitude(skyline);
  const directions: Direction[] = [];
  const sector: number[] = [];
  const weight: number[] = [];
  for (let at = 0; at < SECTORS * COLUMNS; at += 1) {
    const azimuthDeg = SKY_RING_STEP_DEG * ((at + 0.5) / COLUMNS - 0.5);
    const fromDeg = Math.max(FROM_DEG, altitudeOf(azimuthDeg));
    const rowDeg = (TO_DEG - fromDeg) / ROWS;
    const rows = rowDeg > 0 ? ROWS : 0;
    for (let row = 0; row < rows; row += 1) {
      const altitudeDeg = fromDeg + rowDeg * (row + 0.5);
      directions.push({ azimuthDeg, altitudeDeg });
      sector.push(Math.floor(at / COLUMNS));
      weight.push(rowDeg * cosDeg(altitudeDeg));
    }
  }
  return { directions, sector, weight };
};

const sectorMeans = (
  { sector, weight }: RingSamples,
  luminanceCdM2: Float64Array,
): Float64Array => {
  const weights = new Float64Array(SECTORS);
  const sums = new Float64Array(SECTORS);
  sector.forEach((place, at) => {
    const share = weight[at] ?? NaN;
    weights[place] = (weights[place] ?? NaN) + share;
    sums[place] = (sums[place] ?? NaN) + share * (luminanceCdM2[at] ?? NaN);
  });
  return sums.map((sum, place) =>
    (weights[place] ?? 0) > 0 ? ev100FromLuminance(sum / (weights[place] ?? NaN)) : NaN,
  );
};
