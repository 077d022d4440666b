import type { Chromaticity } from '../colour/chromaticity.ts';
import { whiteOfKelvin } from '../colour/daylight-locus.ts';
import { ev100FromIlluminance } from '../exposure/exposure-value.ts';
import { sunKelvin } from '../sky/ambient-colour.ts';
import { SUN_RADIUS_DEG } from '../sun-moon/sun-disc.ts';
import { acosDeg, cosDeg, wrapDeg180 } from '../units/angle.ts';
import type { SetupLight } from './setup-light.ts';
import type { Setup } from './setup-schema.ts';
import type { ShootFraming } from './spot-schema.ts';

export const SUN_ROLES = ['rim', 'side', 'rival-key', 'shaded', 'blocked', 'down'] as const;
export type SunRole = (typeof SUN_ROLES)[number];

export type SunAsLight = {
  readonly role: SunRole;
  /** Where it stands from the line subject to camera: 0 behind the camera, 180 behind the subject; positive to the camera's right. */
  readonly angleDeg: number;
  readonly altitudeDeg: number;
  /** EV at ISO 100 of a surface that faces it, alone; −∞ where none of it arrives. */
  readonly edgeEv: number;
  /** Share of minutes in which it is out, 0 to 1. */
  readonly shareOfMinutes: number;
  readonly colour: Chromaticity;
  readonly kelvin: number;
  /** What it does to the face. */
  readonly onFace: 'nothing' | 'nose-shadow' | 'half-shadow' | 'eye-sockets' | 'edge-only';
};

/** Nearer to the camera's axis than this it lights the face itself; farther than the second it strikes from behind. Common practice. [lightingPractice] */
const RIVAL_WITHIN_DEG = 60;
const RIM_FROM_DEG = 110;
/** Higher than this the brow shades the eyes. [lightingPractice] */
const HIGH_SUN_DEG = 50;

/** The sun as one of the setup's lights at a minute. [iso2720] */
export function sunAsLight(
  light: SetupLight,
  setup: Pick<Setup, 'shaded'>,
  framing: Pick<ShootFraming, 'bearingDeg'>,
): SunAsLight {
  const { sun, daylight, subjectSunOut } = light;
  const altitudeDeg = sun.apparentAltitudeDeg;
  // The camera looks along the bearing; the subject looks back at it.
  const angleDeg = -wrapDeg180(sun.azimuthDeg - (framing.bearingDeg + 180));
  const fromAxisDeg = acosDeg(cosDeg(altitudeDeg) * cosDeg(angleDeg));
  const beamLux = daylight.clearBeamNormalLux * subjectSunOut.discShare;
  const role = roleOf({ altitudeDeg, beamLux, fromAxisDeg, shaded: setup.shaded });
  const kelvin = sunKelvin(altitudeDeg);
  const arrives = role === 'rim' || role === 'side' || role === 'rival-key';
  return {
    role,
    angleDeg,
    altitudeDeg,
    edgeEv: arrives ? ev100FromIlluminance(beamLux) : -Infinity,
    shareOfMinutes: arrives ? daylight.sunShare : 0,
    colour: whiteOfKelvin(kelvin),
    kelvin,
    onFace: onFaceOf(role, fromAxisDeg, altitudeDeg),
  };
}

function roleOf(seen: {
  readonly altitudeDeg: number;
  readonly beamLux: number;
  readonly fromAxisDeg: number;
  readonly shaded: boolean;
}): SunRole {
  if (seen.altitudeDeg < -SUN_RADIUS_DEG) return 'down';
  if (!(seen.beamLux > 0)) return 'blocked';
  if (seen.shaded) return 'shaded';
  if (seen.fromAxisDeg < RIVAL_WITHIN_DEG) return 'rival-key';
  return seen.fromAxisDeg < RIM_FROM_DEG ? 'side' : 'rim';
}

function onFaceOf(role: SunRole, fromAxisDeg: number, altitudeDeg: number): SunAsLight['onFace'] {
  if (role === 'rim') return 'edge-only';
  if (role !== 'side' && role !== 'rival-key') return 'nothing';
  if (altitudeDeg > HIGH_SUN_DEG) return 'eye-sockets';
  return fromAxisDeg >= RIVAL_WITHIN_DEG ? 'half-shadow' : 'nose-shadow';
}
