import { describe, expect, test } from 'vitest';

import { demoKit } from '../src/core/plan/demo-kit.ts';
import { demoShoot } from '../src/core/plan/demo-shoot.ts';
import { setupView, type SetupView, type WorkingSetup } from '../src/core/plan/setup-view.ts';
import type { Framing } from '../src/core/sky/framing.ts';
import { conditionSky } from '../src/core/sky/condition-sky.ts';
import { lightAt } from '../src/core/spot/light-at.ts';
import type { SpotLight } from '../src/core/spot/spot-light.ts';
import { reach } from '../src/core/strobe/reach.ts';
import {
  demoInstantMs,
  expectedMinute,
  expectedMinutes,
  type ExpectedMinute,
} from './support/by-hand/expected-minutes.ts';
import { skyDirection, SKY_DIRECTIONS, type Figure } from './support/by-hand/figures.ts';
import {
  ceilingsThere,
  landingThere,
  needsThere,
  popsThere,
  recycleThere,
  settingsEv,
  type SettingsThere,
} from './support/by-hand/recipe.ts';
import { defined } from './support/defined.ts';
import { largestError } from './support/largest-error.ts';

/*
 * Expected side: tests/support/by-hand, which takes the demo's documents as the question and
 * nothing of the app's physics for the answer. Its own formulas are checked against printed values
 * in tests/support/by-hand.test.ts.
 */
const [sunUp, dusk] = expectedMinutes();
const CASES = [
  { minute: 'four on the pier head at 20:00, broken cloud, sun in the frame', expected: sunUp },
  { minute: 'four on the pier head with the sun at −3°, broken cloud', expected: dusk },
  {
    minute: 'two violins at 07:30, clear, sun at the side',
    expected: expectedMinute('two-violins', 'clear', demoInstantMs('07:30')),
  },
];

/** 14 May: 31 + 28 + 31 + 30 + 14. */
const DAY_OF_YEAR = 134;

const viewOf = ({ setupId, condition, instantMs }: ExpectedMinute): SetupView => {
  const view = setupView({
    shoot: { ...demoShoot(), condition },
    kit: demoKit(),
    setupId,
    instantMs,
  });
  if (!view.ok) throw new Error(`no view: ${view.problem.kind}`);
  return view.value;
};

/** The door for light at a minute, asked with the patch where the hand puts it. */
function lightOf({ setupId, condition, instantMs, minute }: ExpectedMinute): SpotLight {
  const { setups, spots } = demoShoot();
  const spot = defined(spots[defined(setups[setupId]).spotId]);
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
function figuresFound(expected: ExpectedMinute): Readonly<Record<string, number>> {
  const light = lightOf(expected);
  const view = viewOf(expected);
  const { sun, daylight, subject, subjectSunOut } = light;
  const frame = defined(light.skyInFrame);
  const { recipe } = answerOf(view);
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
    reachEv: recipe.reachEv,
    inHand: recipe.inHandStops,
    unlitUnderKey: cameraEv - view.light.ambientOutEv,
  };
}

const answerOf = (view: SetupView): WorkingSetup => {
  if (!view.answer.ok) throw new Error(`no recipe: ${view.answer.problem.kind}`);
  return view.answer.value;
};

function skyFound(expected: ExpectedMinute, { sun }: SpotLight): Record<string, number> {
  const { setups, spots } = demoShoot();
  const { elevationM } = defined(spots[defined(setups[expected.setupId]).spotId]);
  const sky = conditionSky({
    sun,
    condition: expected.condition,
    dayOfYear: DAY_OF_YEAR,
    elevationM,
  });
  const which = Object.keys(SKY_DIRECTIONS) as (keyof typeof SKY_DIRECTIONS)[];
  return Object.fromEntries(
    which.map((one) => {
      const { azimuth, altitude } = skyDirection(sun.azimuthDeg, one);
      return [`sky-${one}`, sky({ azimuthDeg: azimuth, altitudeDeg: altitude })];
    }),
  );
}

/** The reach of one side by itself: the fill lights the key's face too, no ambient counts on a rim. */
function sideFound(
  { input, referenceEv }: SetupView,
  role: SetupView['input']['lights'][number]['role'],
): [string, number][] {
  const lights = input.lights.filter(
    (light) => light.role === role || (role === 'key' && light.role === 'fill'),
  );
  const reachEv = reach({
    lights,
    syncShutterS: input.camera.syncShutterS,
    holdStops: input.hold.stops,
    keyStops: defined(input.lights.find((light) => light.role === role)).stops,
    ambientOnSubjectEv: role === 'rim' ? -Infinity : input.ambientOnSubjectEv,
  });
  return [
    [`${role}CeilingEv`, reachEv + input.hold.stops],
    [`${role}ReachEv`, reachEv],
    [`${role}InHand`, reachEv - referenceEv],
  ];
}

const settingsOf = ({ recipe }: WorkingSetup): SettingsThere => ({
  shutter: recipe.shutterS,
  fNumber: recipe.fNumber,
  iso: recipe.iso,
  filterStops: recipe.ndStops,
  powers: recipe.lights.map(({ powerStops }) => powerStops),
});

/** Largest errors in print: light in percent, all else in the figure's own unit. */
const TRACKED: Readonly<
  Record<Figure['unit'], { readonly relative: boolean; readonly track: (error: number) => number }>
> = {
  '°': { relative: false, track: largestError('chain, sun', '°') },
  lx: { relative: true, track: largestError('chain, illuminance', '%') },
  'cd/m²': { relative: true, track: largestError('chain, sky luminance', '%') },
  EV: { relative: false, track: largestError('chain, EV', 'EV') },
  stops: { relative: false, track: largestError('chain, stops', 'stop') },
  share: { relative: false, track: largestError('chain, shares', '') },
  'yes or no': { relative: false, track: (error) => error },
};

describe.each(CASES)('$minute', ({ expected }) => {
  const found = figuresFound(expected);
  const view = viewOf(expected);
  const answer = answerOf(view);
  const { recipe } = answer;
  const { asked } = expected.minute;
  const settings = settingsOf(answer);
  const landing = landingThere(asked, settings);

  test('both sides have the same figures', () => {
    expect(Object.keys(found).toSorted()).toEqual(Object.keys(expected.figures).toSorted());
  });

  test.each(Object.entries(expected.figures))('%s is what the hand computation gives', (name, figure) => {
    const value = defined(found[name]);
    const error = value - figure.value;
    const shown = defined(TRACKED[figure.unit]);
    shown.track(shown.relative && figure.value !== 0 ? (100 * error) / figure.value : error);
    expect(
      Math.abs(error),
      `${name}: hand ${figure.value}, app ${value} ${figure.unit}`,
    ).toBeLessThanOrEqual(figure.tolerance);
  });

  test('the default patch lies where the hand puts it', () => {
    const patch = defined(view.light.patch);
    const there = defined(expected.minute.frame.patchCentre);
    expect(patch.xFraction).toBeCloseTo(there.right, 6);
    expect(patch.yFraction).toBeCloseTo(there.up, 6);
    expect([patch.widthFraction, patch.heightFraction]).toEqual([0.1, 0.1]);
  });

  test('the setup stands in the same light as the spot at that minute', () => {
    const light = lightOf(expected);
    expect(view.light.skyInFrame).toEqual(light.skyInFrame);
    expect(view.light.subject).toEqual(light.subject);
  });

  test('the role that runs out first has the least ceiling', () => {
    const [first] = ceilingsThere(asked).toSorted((one, other) => one.ceiling - other.ceiling);
    expect(recipe.limitingRole).toBe(first?.role);
  });

  test('from the settings alone sky, key, fill and unlit face land within a sixth of a stop of what was asked', () => {
    expect(Math.abs(landing.sky + asked.holdStops)).toBeLessThanOrEqual(1 / 6);
    asked.lights.forEach(({ stops }, place) =>
      expect(Math.abs(defined(landing.faces[place]) - stops)).toBeLessThanOrEqual(1 / 6),
    );
    expect(landing.unlit).toBeLessThanOrEqual(-view.setup.unlitUnderStops);
  });

  test('what the recipe says of sky and faces is where they land', () => {
    expect(Math.abs(recipe.cameraEv - settingsEv(settings))).toBeLessThan(0.002);
    expect(Math.abs(recipe.skyStops - landing.sky)).toBeLessThan(0.04);
    expect(Math.abs(recipe.unlitStops - landing.unlit)).toBeLessThan(0.03);
    const out = expected.minute.ambientOut - settingsEv(settings);
    expect(Math.abs(recipe.unlitOutStops - out)).toBeLessThan(0.03);
    asked.lights.forEach(({ role }, place) => {
      const said =
        role === 'key'
          ? recipe.keyStops
          : role === 'fill'
            ? recipe.fillStops
            : defined(recipe.lights[place]).levelStops;
      // The ambient's 0.03 stop counts for less where flash is most of the light.
      expect(Math.abs(defined(said) - defined(landing.faces[place]))).toBeLessThan(0.01);
    });
  });

  test('a meter reads what the light on the face gives at that shutter and ISO, no lens filter in it', () => {
    const stopsApart = (one: number, other: number): number => Math.abs(2 * Math.log2(one / other));
    expect(stopsApart(recipe.meterFNumber, landing.meter)).toBeLessThan(0.01);
    expect(Math.abs(recipe.flashShare - landing.flashShare)).toBeLessThan(0.002);
    landing.flashMeters.forEach((alone, place) => {
      const light = defined(recipe.lights[place]);
      expect(stopsApart(light.flashMeterFNumber, alone)).toBeLessThan(0.002);
      if (light.role === 'rim') return;
      const ambient = settings.shutter * 2 ** asked.ambient * (settings.iso / 100);
      const total = Math.sqrt(alone ** 2 + ambient);
      expect(stopsApart(light.totalMeterFNumber, total)).toBeLessThan(0.01);
    });
  });

  test('each head stands within one step of the power that is needed', () => {
    const track = largestError(`power needed, ${expected.setupId}`, 'stop');
    needsThere(asked, settings).forEach(({ power }, place) => {
      const { step } = defined(expected.minute.heads[place]);
      expect(track(defined(settings.powers[place]) - power)).toBeLessThanOrEqual(step + 1e-9);
    });
  });

  test('recycling and pops per charge go with the power', () => {
    expected.minute.heads.forEach(({ recycle, pops }, place) => {
      const power = defined(settings.powers[place]);
      const pace = defined(answer.pace[place]);
      expect(Math.abs(pace.recycleS - recycleThere(recycle, power))).toBeLessThan(0.005);
      expect(Math.abs(pace.popsPerCharge - popsThere(pops, power))).toBeLessThanOrEqual(1);
    });
  });
});
