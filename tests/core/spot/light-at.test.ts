import { describe, expect, test } from 'vitest';
import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import {
  ev100FromDomeIlluminance,
  ev100FromIlluminance,
} from '../../../src/core/exposure/exposure-value.ts';
import { conditionSky } from '../../../src/core/sky/condition-sky.ts';
import { skyInFrame } from '../../../src/core/sky/sky-in-frame.ts';
import { lightAt } from '../../../src/core/spot/light-at.ts';
import { subjectIlluminance } from '../../../src/core/subject/subject-illuminance.ts';
import { moonPosition } from '../../../src/core/sun-moon/moon-position.ts';

const SPOT = {
  place: { latitudeDeg: 50.1, longitudeDeg: -5.3, elevationM: 30 },
  zone: 'Europe/London',
  framing: {
    bearingDeg: 285,
    tiltDeg: 6,
    focalLengthMm: 35,
    sensorWidthMm: 36,
    sensorHeightMm: 24,
  },
  patch: { xFraction: -0.25, yFraction: 0.15, widthFraction: 0.1, heightFraction: 0.1 },
  skyline: [
    { azimuthDeg: 0, altitudeDeg: 8 },
    { azimuthDeg: 120, altitudeDeg: 1 },
    { azimuthDeg: 300, altitudeDeg: 2 },
  ],
  groundReflectance: 0.25,
} as const;

const AFTERNOON = Date.UTC(2027, 5, 12, 16, 30); // sun about 37° up in the west
const DAY_OF_YEAR = 163;

describe('the light at a minute is the sky of its condition, read in the frame and at the face', () => {
  test.each([
    ['in the afternoon', AFTERNOON],
    ['at dusk', Date.UTC(2027, 5, 12, 20, 50)],
    ['at night under a moon', Date.UTC(2027, 5, 18, 0, 0)],
  ] as const)('%s', (_, instantMs) => {
    for (const condition of SKY_CONDITIONS) {
      const light = lightAt({ ...SPOT, instantMs, condition });
      const { sun } = light;
      const moon = moonPosition(instantMs, SPOT.place);
      const dayOfYear = instantMs > Date.UTC(2027, 5, 15) ? 169 : DAY_OF_YEAR;
      const sky = conditionSky({ sun, condition, dayOfYear, elevationM: 30, moon });
      const read = skyInFrame({ ...SPOT, sky, sun });
      expect(light.skyInFrame?.meanEv).toBeCloseTo(read?.meanEv ?? NaN, 9);
      expect(light.skyInFrame?.darkEv).toBeCloseTo(read?.darkEv ?? NaN, 9);
      expect(light.skyInFrame?.maxEv).toBeCloseTo(read?.maxEv ?? NaN, 9);
      expect(light.skyInFrame?.patchEv).toBeCloseTo(read?.patchEv ?? NaN, 9);
      const hidden = condition === 'broken-cloud';
      const face = subjectIlluminance({
        ...SPOT,
        sun,
        sky,
        beamNormalLux: hidden ? 0 : light.daylight.beamNormalLux,
        facingDeg: 105,
      });
      expect(light.ambientOnSubjectEv).toBeCloseTo(ev100FromIlluminance(face.planeLux), 9);
      expect(light.incidentEv).toBeCloseTo(ev100FromDomeIlluminance(face.domeLux), 9);
    }
  });
});

describe('broken cloud is two states', () => {
  const facingSun = { ...SPOT, framing: { ...SPOT.framing, bearingDeg: 80 }, instantMs: AFTERNOON };
  const light = lightAt({ ...facingSun, condition: 'broken-cloud' });

  test('with the sun out the face has the clear beam, with the sun hidden none', () => {
    expect(light.subject.beamPlaneLux).toBe(0);
    expect(light.subjectSunOut.beamPlaneLux).toBeGreaterThan(30_000);
    const { clearBeamNormalLux, beamNormalLux } = light.daylight;
    expect(clearBeamNormalLux).toBeGreaterThan(2 * beamNormalLux);
    const cosine = light.subjectSunOut.beamPlaneLux / clearBeamNormalLux;
    const { azimuthDeg, apparentAltitudeDeg } = light.sun;
    const expected =
      Math.cos((apparentAltitudeDeg * Math.PI) / 180) *
      Math.cos(((azimuthDeg - 260) * Math.PI) / 180);
    expect(cosine).toBeCloseTo(expected, 9);
  });

  test('reach is judged by the hidden sun, the unlit face by the sun that is out', () => {
    expect(light.ambientOnSubjectEv).toBe(light.ambientHiddenEv);
    expect(light.ambientOutEv - light.ambientHiddenEv).toBeGreaterThan(1);
  });

  test.each(['clear', 'haze', 'bright-overcast', 'heavy-overcast'] as const)(
    'under %s both are the same',
    (condition) => {
      const steady = lightAt({ ...facingSun, condition });
      expect(steady.ambientOutEv).toBe(steady.ambientHiddenEv);
      expect(steady.ambientOnSubjectEv).toBe(steady.ambientHiddenEv);
    },
  );
});

test('a panel in the sun leaves the light of sky and ground', () => {
  const light = lightAt({
    ...SPOT,
    framing: { ...SPOT.framing, bearingDeg: 80 },
    instantMs: AFTERNOON,
    condition: 'clear',
  });
  const withoutBeam = light.subject.planeLux - light.subject.beamPlaneLux;
  expect(light.ambientShadedEv).toBeCloseTo(ev100FromIlluminance(withoutBeam), 9);
  expect(light.ambientOutEv - light.ambientShadedEv).toBeGreaterThan(1);
});

const lightTowards = (instantMs: number, condition: 'clear' | 'broken-cloud', bearingDeg: number) =>
  lightAt({ ...SPOT, instantMs, condition, framing: { ...SPOT.framing, bearingDeg } });

test('the spread is wider for a patch of broken cloud, near the sun and around sunset', () => {
  const away = lightTowards(AFTERNOON, 'broken-cloud', 30);
  expect(away.patchSpreadStops).toBeCloseTo(Math.hypot(1, 1.2), 9);
  expect(away.frameSpreadStops).toBeCloseTo(Math.hypot(1, 0.7), 9);
  expect(lightTowards(AFTERNOON, 'clear', 30).frameSpreadStops).toBeCloseTo(
    Math.hypot(0.3, 0.3),
    9,
  );
  const evening = Date.UTC(2027, 5, 12, 19, 45); // sun about 7° up, azimuth 299°, in the frame
  expect(lightTowards(evening, 'clear', 299).frameSpreadStops).toBeCloseTo(Math.hypot(0.5, 0.7), 9);
  const sunset = Date.UTC(2027, 5, 12, 20, 32);
  expect(lightTowards(sunset, 'clear', 30).frameSpreadStops).toBeCloseTo(Math.hypot(0.5, 1), 9);
});

test('a frame full of ground has no sky, but the face still has light', () => {
  const light = lightAt({
    ...SPOT,
    framing: { ...SPOT.framing, tiltDeg: -45 },
    instantMs: AFTERNOON,
    condition: 'clear',
  });
  expect(light.skyInFrame).toBeNull();
  expect(light.frameSpreadStops).toBeNaN();
  expect(light.ambientOnSubjectEv).toBeGreaterThan(9);
});
