import type { Kit } from '../../../src/core/plan/kit.ts';
import type { Light, Setup } from '../../../src/core/plan/setup-schema.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import { daylightThere, type DaylightThere, type HandCondition } from './daylight.ts';
import { sin } from './degrees.ts';
import { angleToSun, frameThere, headThere, type CameraThere, type FrameThere } from './frame.ts';
import { guideNumberOfReading, type AskedThere, type LightThere } from './recipe.ts';
import { skyThere, type SkyThere } from './sky.ts';
import { skylineThere } from './skyline.ts';
import { discShare, evOfDome, evOfPlane, subjectThere, type SubjectThere } from './subject.ts';
import { spreadsThere } from './spread.ts';
import { sunThere, type SunThere } from './sun.ts';

/** Everything the hand computation finds for a setup at a minute. */
export type MinuteThere = {
  readonly sun: SunThere;
  readonly daylight: DaylightThere;
  readonly sky: SkyThere;
  readonly frame: FrameThere;
  readonly frameSpread: number;
  readonly patchSpread: number;
  /** Clouds before the sun, where clouds come and go; else with whatever beam there is. */
  readonly subject: SubjectThere;
  readonly subjectSunOut: SubjectThere;
  /** Share of the sun's disc above the skyline. */
  readonly discShare: number;
  readonly ambient: number;
  readonly ambientOut: number;
  readonly incident: number;
  readonly hold: {
    readonly patch: number;
    readonly frame: number;
    readonly incident: number;
    readonly cameraEv: number;
    /** How far the unlit face may lie below the key at least. */
    readonly unlitUnder: number;
  };
  readonly asked: AskedThere;
  /** Metres and seconds of the setup's heads, by place of the light. */
  readonly heads: readonly {
    readonly recycle: number;
    readonly pops: number;
    readonly step: number;
  }[];
};

/** The documents are the question; every figure of the answer is worked out here. */
export type Question = {
  readonly shoot: Shoot;
  readonly kit: Kit;
  readonly setupId: string;
  readonly condition: HandCondition;
  readonly instantMs: number;
};

const found = <Value>(value: Value | undefined, what: string): Value => {
  if (value === undefined) throw new Error(`the question has no ${what}`);
  return value;
};

export function minuteThere({ shoot, kit, setupId, condition, instantMs }: Question): MinuteThere {
  const setup = found(shoot.setups[setupId], 'setup');
  const spot = found(shoot.spots[setup.spotId], 'spot');
  const framing = setup.framing ?? spot.framing;
  const sun = sunThere(instantMs, spot.latitudeDeg, spot.longitudeDeg, spot.elevationM);
  const apparent = { azimuth: sun.azimuth, altitude: sun.apparentAltitude };
  const daylight = daylightThere(sun, condition, dayOfYear(shoot.date), spot.elevationM);
  const skyline = skylineThere(
    Object.values(spot.skyline).map(({ azimuthDeg, altitudeDeg }) => ({
      azimuth: azimuthDeg,
      altitude: altitudeDeg,
    })),
  );
  const sky = skyThere(condition, sun, daylight.diffuse);
  const camera: CameraThere = {
    bearing: framing.bearingDeg,
    tilt: framing.tiltDeg,
    focal: framing.focalLengthMm,
    width: framing.sensorWidthMm,
    height: framing.sensorHeightMm,
  };
  const sunIsLeft = sin(apparent.azimuth - camera.bearing) < 0;
  const head = headThere(camera, {
    distance: framing.cameraDistanceM,
    camera: framing.cameraHeightM,
    face: setup.faceHeightM,
    across: ((setup.people - 1) / 2) * setup.spacingM * (sunIsLeft ? 1 : -1),
  });
  const frame = frameThere(camera, skyline, sky, apparent, head);
  const patchCentre = found(frame.patchCentre ?? undefined, 'patch of sky');
  const lit = (beam: number): SubjectThere =>
    subjectThere(framing.bearingDeg + 180, spot.groundReflectance, skyline, sky, apparent, beam);
  const subjectSunOut = lit(daylight.beamSunOut);
  const subject = condition === 'broken-cloud' ? lit(0) : subjectSunOut;
  const ambient = evOfPlane(subject.plane);
  const incident = evOfDome(subject.dome);
  const reference = found(frame.patch ?? undefined, 'patch of sky');
  const cameraEv = reference + setup.holdStops;
  return {
    sun,
    daylight,
    sky,
    frame,
    ...spreadsThere(condition, sun, daylight.spread, {
      frame: angleToSun(camera, { right: 0, up: 0, size: 1 }, apparent),
      patch: angleToSun(camera, { ...patchCentre, size: 0.1 }, apparent),
    }),
    subject,
    subjectSunOut,
    discShare: discShare(skyline, apparent),
    ambient,
    ambientOut: evOfPlane(subjectSunOut.plane),
    incident,
    hold: {
      patch: setup.holdStops,
      frame: cameraEv - frame.mean,
      incident: cameraEv - incident,
      cameraEv,
      unlitUnder: setup.unlitUnderStops,
    },
    asked: {
      lights: lightsOf(setup, kit),
      ambient,
      reference,
      holdStops: setup.holdStops,
      syncShutter: found(kit.cameras[setup.cameraId], 'camera').syncShutterS,
    },
    heads: inOrderOf(setup).map(({ headId }) => {
      const one = found(kit.heads[headId], 'head');
      return {
        recycle: one.recycleS,
        pops: one.popsPerCharge * leftInTheCold(setup.airC),
        step: one.stepStops,
      };
    }),
  };
}

/** Of a charge, between freezing (0.5 to 0.8 of it, common practice) and 20 °C. */
const leftInTheCold = (airC: number): number => 0.65 + (0.35 * airC) / 20;

const dayOfYear = (date: string): number =>
  (Date.parse(`${date}T00:00Z`) - Date.parse(`${date.slice(0, 4)}-01-01T00:00Z`)) / 86_400_000 + 1;

const inOrderOf = (setup: Setup): readonly Light[] =>
  Object.values(setup.lights).toSorted((one, other) => (one.order < other.order ? -1 : 1));

/** Only what the demo's lights are made of: round modifiers, one head each, no grids, no gels. */
function lightsOf(setup: Setup, kit: Kit): readonly LightThere[] {
  return inOrderOf(setup).map((light) => {
    const head = found(kit.heads[light.headId], 'head');
    const modifier = found(kit.modifiers[light.modifierId], 'modifier');
    const role = light.role === 'background' || light.role === 'cross' ? undefined : light.role;
    const reading = head.readings[light.modifierId];
    const parts =
      (light.diffuser ? found(modifier.diffuserStops ?? undefined, 'diffuser') : 0) +
      (light.baffle ? found(modifier.baffleStops ?? undefined, 'baffle') : 0);
    if (light.grid || light.gelId !== null || light.headCount !== 1 || !modifier.round)
      throw new Error('the hand computation takes one head with a round modifier, no grid, no gel');
    if (reading !== undefined && parts > 0)
      throw new Error('the hand computation takes readings of the modifier as it stands only');
    const radius = modifier.widthM / 2;
    return {
      role: found(role, 'role that is covered'),
      stops: light.stops,
      guideNumber:
        reading === undefined
          ? found(head.guideNumberM ?? undefined, 'guide number')
          : guideNumberOfReading(reading.fNumber, reading.distanceM, radius),
      lossStops: reading === undefined ? modifier.lossStops + parts : 0,
      distance: light.distanceM,
      radius,
    };
  });
}
