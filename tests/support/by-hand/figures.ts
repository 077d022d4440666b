import type { Toward } from './degrees.ts';
import type { MinuteThere } from './minute.ts';
import { allAtFullThere, ceilingsThere } from './recipe.ts';

/** One expected figure; the tolerance is in the figure's own unit. */
export type Figure = {
  readonly value: number;
  readonly tolerance: number;
  readonly unit: '°' | 'lx' | 'cd/m²' | 'EV' | 'stops' | 'share' | 'yes or no';
};

/** Where the sky is looked at 10° above the horizon: toward the sun, across, away from it. */
export const SKY_DIRECTIONS = ['toward', 'across', 'away'] as const;

export const skyDirection = (
  sunAzimuth: number,
  which: (typeof SKY_DIRECTIONS)[number],
): Toward => ({
  azimuth: sunAzimuth + 90 * SKY_DIRECTIONS.indexOf(which),
  altitude: 10,
});

/**
 * Where two almanacs differ by 0.014° and the sky by up to 1.33 stops a degree (twilight), light
 * differs by 0.02 stop, 1.3 %; a sampled frame adds 0.02 stop, a sampled dome of sky 0.01.
 */
const SUN_DEG = 0.02;
const LIGHT_SHARE = 0.02;
const FRAME_STOPS = 0.04;
const SUBJECT_STOPS = 0.03;
/** Near the horizon the air mass changes by 3 a degree, exp(−0.59 m) by 3.6 % in 0.02°. */
const CLOUDED_BEAM_SHARE = 0.04;
/** Only logarithms of the same numbers. */
const ARITHMETIC_STOPS = 0.002;

const degrees = (value: number): Figure => ({ value, tolerance: SUN_DEG, unit: '°' });
const lux = (value: number, share = LIGHT_SHARE): Figure => ({
  value,
  tolerance: share * value,
  unit: 'lx',
});
const ev = (value: number, tolerance: number): Figure => ({ value, tolerance, unit: 'EV' });
const stops = (value: number, tolerance: number): Figure => ({ value, tolerance, unit: 'stops' });

/** Every figure of a minute that does not hang on how the dials are set. */
export function figuresThere(minute: MinuteThere): Readonly<Record<string, Figure>> {
  const { sun, daylight, frame, subject, subjectSunOut, hold, asked } = minute;
  const ceilings = ceilingsThere(asked);
  const least = ceilings.reduce((one, other) => (other.ceiling < one.ceiling ? other : one));
  return {
    sunAzimuth: degrees(sun.azimuth),
    sunTrueAltitude: degrees(sun.trueAltitude),
    sunApparentAltitude: degrees(sun.apparentAltitude),
    beamNormal: lux(daylight.beamNormal, CLOUDED_BEAM_SHARE),
    beamSunOut: lux(daylight.beamSunOut),
    sunShare: {
      value: daylight.sunShare,
      tolerance: CLOUDED_BEAM_SHARE * daylight.sunShare,
      unit: 'share',
    },
    diffuse: lux(daylight.diffuse),
    global: lux(daylight.global),
    levelSpread: stops(daylight.spread, ARITHMETIC_STOPS),
    frameSpread: stops(minute.frameSpread, ARITHMETIC_STOPS),
    patchSpread: stops(minute.patchSpread, ARITHMETIC_STOPS),
    ...skyFigures(minute),
    minEv: ev(frame.min, FRAME_STOPS),
    darkEv: ev(frame.dark, FRAME_STOPS),
    meanEv: ev(frame.mean, FRAME_STOPS),
    brightEv: ev(frame.bright, FRAME_STOPS),
    maxEv: ev(frame.max, FRAME_STOPS),
    patchEv: ev(minute.asked.reference, FRAME_STOPS),
    skyShare: { value: frame.skyShare, tolerance: 0.002, unit: 'share' },
    sunInFrame: { value: frame.sunInFrame ? 1 : 0, tolerance: 0, unit: 'yes or no' },
    discShare: { value: minute.discShare, tolerance: SUN_DEG / 0.54, unit: 'share' },
    plane: lux(subject.plane),
    dome: lux(subject.dome),
    ground: lux(subject.ground),
    planeSunOut: lux(subjectSunOut.plane),
    domeSunOut: lux(subjectSunOut.dome),
    groundSunOut: lux(subjectSunOut.ground),
    ambientEv: ev(minute.ambient, SUBJECT_STOPS),
    ambientSunOutEv: ev(minute.ambientOut, SUBJECT_STOPS),
    incidentEv: ev(minute.incident, SUBJECT_STOPS),
    cameraEv: ev(hold.cameraEv, FRAME_STOPS),
    holdUnderPatch: stops(hold.patch, ARITHMETIC_STOPS),
    holdUnderFrame: stops(hold.frame, FRAME_STOPS),
    holdUnderIncident: stops(hold.incident, FRAME_STOPS),
    ...Object.fromEntries(
      ceilings.flatMap(({ role, ceiling, reach, inHand }) => [
        [`${role}CeilingEv`, ev(ceiling, SUBJECT_STOPS)],
        [`${role}ReachEv`, ev(reach, SUBJECT_STOPS)],
        [`${role}InHand`, stops(inHand, FRAME_STOPS)],
      ]),
    ),
    ...Object.fromEntries(
      allAtFullThere(asked).map(({ role, reach }) => [
        `${role}AllAtFullReachEv`,
        ev(reach, SUBJECT_STOPS),
      ]),
    ),
    reachEv: ev(least.reach, SUBJECT_STOPS),
    inHand: stops(least.inHand, FRAME_STOPS),
    unlitUnderKey: stops(hold.cameraEv - minute.ambientOut, FRAME_STOPS),
  };
}

const skyFigures = ({ sun, sky }: MinuteThere): Record<string, Figure> =>
  Object.fromEntries(
    SKY_DIRECTIONS.map((which) => {
      const value = sky(skyDirection(sun.azimuth, which));
      return [`sky-${which}`, { value, tolerance: LIGHT_SHARE * value, unit: 'cd/m²' as const }];
    }),
  );
