import { chromaticityOf, xyzOf, type Chromaticity } from '../colour/chromaticity.ts';
import { whiteOfMired } from '../colour/daylight-locus.ts';
import { kelvinFromMired, miredFromKelvin } from '../colour/mired.ts';
import type { SkyCondition } from '../daylight/sky-condition.ts';

/** Of the direct sun by its altitude, middles of published bands; straight in mired between. [practitionerPages] */
const SUN = [
  { altitudeDeg: 0, kelvin: 2200 },
  { altitudeDeg: 10, kelvin: 3450 },
  { altitudeDeg: 25, kelvin: 4300 },
  { altitudeDeg: 60, kelvin: 5400 },
] as const;

/** Of the light that comes from the whole sky, middles of published bands. [practitionerPages] */
const SKY_KELVIN: Readonly<Record<SkyCondition, number>> = {
  clear: 11_000,
  haze: 8000,
  'broken-cloud': 7200,
  'bright-overcast': 6500,
  'heavy-overcast': 6500,
};

/** Half of the published bands, mired: blue sky 50 to 110, overcast 135 to 165, sunset 420 to 500. [practitionerPages] */
export const AMBIENT_SPREAD_MIRED = 30;

/** Held outside 0 to 60°. */
export function sunKelvin(apparentAltitudeDeg: number): number {
  const held = Math.min(60, Math.max(0, apparentAltitudeDeg));
  const upper = SUN.findIndex(({ altitudeDeg }) => altitudeDeg >= held);
  const [from, to] = [SUN[Math.max(0, upper - 1)] ?? SUN[0], SUN[upper] ?? SUN[3]];
  const width = to.altitudeDeg - from.altitudeDeg;
  const share = width === 0 ? 0 : (held - from.altitudeDeg) / width;
  const [one, other] = [miredFromKelvin(from.kelvin), miredFromKelvin(to.kelvin)];
  return kelvinFromMired(one + share * (other - one));
}

export const skyKelvin = (condition: SkyCondition): number => SKY_KELVIN[condition];

/**
 * Colour of the ambient on a subject: beam and sky added as light, each in its own white.
 * ± `AMBIENT_SPREAD_MIRED`. [practitionerPages]
 */
export function ambientColour(light: {
  readonly condition: SkyCondition;
  readonly sunAltitudeDeg: number;
  /** Of the sun's beam and of everything else, on the same receptor. */
  readonly beamLux: number;
  readonly restLux: number;
}): Chromaticity {
  const { condition, sunAltitudeDeg, beamLux, restLux } = light;
  const sky = whiteOfMired(miredFromKelvin(skyKelvin(condition)));
  if (!(beamLux > 0)) return sky;
  const beam = xyzOf(whiteOfMired(miredFromKelvin(sunKelvin(sunAltitudeDeg))), beamLux);
  const rest = xyzOf(sky, Math.max(0, restLux));
  return chromaticityOf([beam[0] + rest[0], beam[1] + rest[1], beam[2] + rest[2]]);
}
