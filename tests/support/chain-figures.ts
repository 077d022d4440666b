import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { setupView, type SetupView } from '../../src/core/plan/setup-view.ts';
import type { Spot } from '../../src/core/plan/shoot.ts';
import { conditionSky } from '../../src/core/sky/condition-sky.ts';
import type { Framing } from '../../src/core/sky/framing.ts';
import { lightAt } from '../../src/core/spot/light-at.ts';
import type { SpotLight } from '../../src/core/spot/spot-light.ts';
import { ceilingEv } from '../../src/core/strobe/ceilings.ts';
import { judgeRecipe } from '../../src/core/strobe/judge-recipe.ts';
import { reach } from '../../src/core/strobe/reach.ts';
import { fastestShutter, recipeCase } from '../../src/core/strobe/recipe-case.ts';
import type { ExpectedMinute } from './by-hand/expected-minutes.ts';
import { SKY_DIRECTIONS, skyDirection } from './by-hand/figures.ts';
import { defined } from './defined.ts';

/** 14 May: 31 + 28 + 31 + 30 + 14. */
const DAY_OF_YEAR = 134;

/** The setup as the app shows it. */
export const viewOf = ({
  setupId,
  condition,
  instantMs,
}: Pick<ExpectedMinute, 'setupId' | 'condition' | 'instantMs'>): SetupView => {
  const view = setupView({
    shoot: { ...demoShoot(), condition },
    kit: demoKit(),
    setupId,
    instantMs,
  });
  if (!view.ok) throw new Error(`no view: ${view.problem.kind}`);
  return view.value;
};

const spotOf = (setupId: string): Spot => {
  const { setups, spots } = demoShoot();
  return defined(spots[defined(setups[setupId]).spotId]);
};

/** The door for light at a minute, asked with the patch where the hand puts it. */
export function lightOf({ setupId, condition, instantMs, minute }: ExpectedMinute): SpotLight {
  const spot = spotOf(setupId);
  const { bearingDeg, tiltDeg, focalLengthMm, sensorWidthMm, sensorHeightMm } = spot.framing;
  const framing: Framing = { bearingDeg, tiltDeg, focalLengthMm, sensorWidthMm, sensorHeightMm };
  const patch = defined(minute.frame.patchCentre);
  return lightAt({
    instantMs,
    place: spot,
    zone: spot.zone,
    framing,
    patch: {
      xFraction: patch.right,
      yFraction: patch.up,
      widthFraction: 0.1,
      heightFraction: 0.1,
    },
    skyline: Object.values(spot.skyline),
    groundReflectance: spot.groundReflectance,
    condition,
  });
}

/** The app's figures under the names of the hand's. */
export function figuresFound(expected: ExpectedMinute): Readonly<Record<string, number>> {
  const light = lightOf(expected);
  const view = viewOf(expected);
  const { sun, daylight, subject, subjectSunOut } = light;
  const frame = defined(light.skyInFrame);
  const { reachEv, inHandStops } = judgeRecipe(view.input);
  const cameraEv = view.referenceEv + view.setup.holdStops;
  return {
    sunAzimuth: sun.azimuthDeg,
    sunTrueAltitude: sun.trueAltitudeDeg,
    sunApparentAltitude: sun.apparentAltitudeDeg,
    beamNormal: daylight.beamNormalLux,
    beamSunOut: daylight.clearBeamNormalLux,
    sunShare: daylight.sunShare,
    diffuse: daylight.diffuseHorizontalLux,
    global: daylight.globalHorizontalLux,
    levelSpread: daylight.spreadStops,
    frameSpread: light.frameSpreadStops,
    patchSpread: light.patchSpreadStops,
    ...skyFound(expected, light),
    minEv: frame.minEv,
    darkEv: frame.darkEv,
    meanEv: frame.meanEv,
    brightEv: frame.brightEv,
    maxEv: frame.maxEv,
    patchEv: frame.patchEv,
    skyShare: frame.skyShare,
    sunInFrame: frame.sunInFrame ? 1 : 0,
    discShare: subject.discShare,
    plane: subject.planeLux,
    dome: subject.domeLux,
    ground: subject.groundLux,
    planeSunOut: subjectSunOut.planeLux,
    domeSunOut: subjectSunOut.domeLux,
    groundSunOut: subjectSunOut.groundLux,
    ambientEv: light.ambientOnSubjectEv,
    ambientSunOutEv: light.ambientOutEv,
    incidentEv: light.incidentEv,
    cameraEv,
    holdUnderPatch: view.hold.patch,
    holdUnderFrame: view.hold.frame,
    holdUnderIncident: view.hold.incident,
    ...Object.fromEntries(view.input.lights.flatMap(({ role }) => sideFound(view, role))),
    reachEv,
    inHand: inHandStops,
    unlitUnderKey: cameraEv - view.light.ambientOutEv,
  };
}

function skyFound(expected: ExpectedMinute, { sun }: SpotLight): Record<string, number> {
  const { elevationM } = spotOf(expected.setupId);
  const sky = conditionSky({
    sun,
    condition: expected.condition,
    dayOfYear: DAY_OF_YEAR,
    elevationM,
  });
  return Object.fromEntries(
    SKY_DIRECTIONS.map((one) => {
      const { azimuth, altitude } = skyDirection(sun.azimuthDeg, one);
      return [`sky-${one}`, sky({ azimuthDeg: azimuth, altitudeDeg: altitude })];
    }),
  );
}

/** One side by itself: its ceiling as the recipe has it, and the door's sum of all that lights it. */
function sideFound(
  { input, referenceEv }: SetupView,
  role: SetupView['input']['lights'][number]['role'],
): [string, number][] {
  const question = recipeCase(input);
  const side = defined(question.sides.all.find((one) => one.role === role));
  const ceiling = ceilingEv(input, question.sides, side, fastestShutter(question));
  // The fill lights the key's face too, no ambient counts on a rim.
  const allAtFullEv = reach({
    lights: input.lights.filter(
      (light) => light.role === role || (role === 'key' && light.role === 'fill'),
    ),
    syncShutterS: input.camera.syncShutterS,
    holdStops: input.hold.stops,
    keyStops: defined(input.lights.find((light) => light.role === role)).stops,
    ambientOnSubjectEv: role === 'rim' ? -Infinity : input.ambientOnSubjectEv,
  });
  return [
    [`${role}CeilingEv`, ceiling],
    [`${role}ReachEv`, ceiling - input.hold.stops],
    [`${role}InHand`, ceiling - input.hold.stops - referenceEv],
    [`${role}AllAtFullReachEv`, allAtFullEv],
  ];
}
