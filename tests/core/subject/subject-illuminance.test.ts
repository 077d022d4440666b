import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daylightAt } from '../../../src/core/daylight/daylight-at.ts';
import type { SkyCondition } from '../../../src/core/daylight/sky-condition.ts';
import { ev100FromIlluminance } from '../../../src/core/exposure/exposure-value.ts';
import { conditionSky } from '../../../src/core/sky/condition-sky.ts';
import { generalSky } from '../../../src/core/sky/general-sky.ts';
import type { GeneralSkyType } from '../../../src/core/sky/general-sky.data.ts';
import { subjectIlluminance } from '../../../src/core/subject/subject-illuminance.ts';
import { largestError } from '../../support/largest-error.ts';
import { seededRandom, seededScene } from '../../support/seeded-framings.ts';

const RAD = Math.PI / 180;
const sunAt = (azimuthDeg: number, altitudeDeg: number) => ({
  azimuthDeg,
  trueAltitudeDeg: altitudeDeg,
  apparentAltitudeDeg: altitudeDeg,
});
const DARK = { sun: sunAt(0, -20), beamNormalLux: 0, skyline: [], facingDeg: 123 } as const;

describe('under an even sky of luminance L and over black ground', () => {
  test.each([0, 45, 123, 270])('facing %i°: ground πL, plane half of it, dome πL', (facingDeg) => {
    const light = subjectIlluminance({ ...DARK, facingDeg, sky: () => 700, groundReflectance: 0 });
    expect(light.groundLux / (Math.PI * 700)).toBeCloseTo(1, 9);
    expect(light.planeLux / ((Math.PI * 700) / 2)).toBeCloseTo(1, 9);
    expect(light.domeLux / (Math.PI * 700)).toBeCloseTo(1, 9);
  });

  test('a wall all round at 30° leaves the ground cos² 30° of it', () => {
    // Sky above altitude s lights level ground with πL cos² s.
    const skyline = [{ azimuthDeg: 0, altitudeDeg: 30 }];
    const light = subjectIlluminance({ ...DARK, skyline, sky: () => 700, groundReflectance: 0 });
    expect(light.groundLux / (Math.PI * 700 * 0.75)).toBeCloseTo(1, 9);
  });

  test('white ground closes the ball: plane πL, dome 2πL', () => {
    const light = subjectIlluminance({ ...DARK, sky: () => 700, groundReflectance: 1 });
    expect(light.planeLux / (Math.PI * 700)).toBeCloseTo(1, 9);
    expect(light.domeLux / (2 * Math.PI * 700)).toBeCloseTo(1, 9);
  });
});

describe('the beam of the sun', () => {
  const beam = { sky: () => 0, beamNormalLux: 80_000, skyline: [], groundReflectance: 0 } as const;

  test('in the face it gives plane and dome alike its full light, cosine with height', () => {
    const low = subjectIlluminance({ ...beam, sun: sunAt(90, 1), facingDeg: 90 });
    expect(low.planeLux).toBeCloseTo(80_000 * Math.cos(RAD), 3);
    expect(low.domeLux).toBeCloseTo((80_000 * (1 + Math.cos(RAD))) / 2, 3);
    const high = subjectIlluminance({ ...beam, sun: sunAt(90, 60), facingDeg: 90 });
    expect(high.planeLux).toBeCloseTo(40_000, 6);
    expect(high.groundLux).toBeCloseTo(80_000 * Math.sin(60 * RAD), 6);
  });

  test('from the side it misses the plane and halves on the dome, from behind it misses both', () => {
    const side = subjectIlluminance({ ...beam, sun: sunAt(90, 0.5), facingDeg: 0 });
    expect(side.planeLux).toBeLessThan(1);
    expect(side.domeLux).toBeCloseTo(40_000, 3);
    const behind = subjectIlluminance({ ...beam, sun: sunAt(180, 0.5), facingDeg: 0 });
    expect(behind.planeLux).toBe(0);
    expect(behind.domeLux).toBeLessThan(2);
  });

  test('half a disc over a hill is half the beam, none behind it', () => {
    const skyline = [{ azimuthDeg: 0, altitudeDeg: 10 }];
    const shares = [9.7, 10, 10.3].map(
      (altitudeDeg) =>
        subjectIlluminance({ ...beam, skyline, sun: sunAt(90, altitudeDeg), facingDeg: 90 })
          .discShare,
    );
    expect(shares[0]).toBe(0);
    expect(shares[1]).toBeCloseTo(0.5, 9);
    expect(shares[2]).toBe(1);
  });

  test('lit ground comes back to a face in the shade: ρ E/π over the lower half', () => {
    const sun = sunAt(180, 30); // 40 klx on the ground; half the ball at 0.2 · 40 klx / π
    const light = subjectIlluminance({ ...beam, sun, groundReflectance: 0.2, facingDeg: 0 });
    expect(light.planeLux).toBeCloseTo(0.2 * 40_000 * 0.5, 6);
    expect(light.domeLux).toBeCloseTo(0.2 * 40_000 + (80_000 * (1 - Math.cos(30 * RAD))) / 2, 6);
  });

  test('what a panel in the beam takes off is named', () => {
    const light = subjectIlluminance({ ...beam, sun: sunAt(90, 30), facingDeg: 60 });
    expect(light.beamPlaneLux).toBeCloseTo(light.planeLux, 9);
    expect(light.beamDomeLux).toBeCloseTo(light.domeLux, 9);
  });
});

const record = largestError('light on the subject, plain sum', 'stop', {
  quantity: 'light on the subject',
  method: 'sums over the sky above the skyline: ground, plane, dome',
  comparedWith: 'a plain sum over half degrees, 15 skies and ragged skylines',
});

test('the same as a plain sum over half-degree patches of the sky, within 0.02 stop', () => {
  // Sixteen standard skies and ragged skylines; the sum is written here from the definitions.
  const random = seededRandom(99);
  for (let look = 0; look < 15; look += 1) {
    const { skyline, sun, framing } = seededScene(random);
    const sky = generalSky((look + 1) as GeneralSkyType, sun);
    const edge = (azimuthDeg: number): number => {
      const after = skyline.findIndex((point) => point.azimuthDeg > azimuthDeg);
      const to = skyline[after === -1 ? 0 : after]!;
      const from = skyline[after <= 0 ? skyline.length - 1 : after - 1]!;
      const width = (to.azimuthDeg - from.azimuthDeg + 360) % 360;
      const along = ((azimuthDeg - from.azimuthDeg + 360) % 360) / width;
      return from.altitudeDeg + along * (to.altitudeDeg - from.altitudeDeg);
    };
    const sums = { ground: 0, plane: 0, dome: 0, planeRest: 0, domeRest: 0 };
    for (let azimuthDeg = 0.25; azimuthDeg < 360; azimuthDeg += 0.5) {
      const edgeDeg = edge(azimuthDeg);
      for (let altitudeDeg = -89.75; altitudeDeg < 90; altitudeDeg += 0.5) {
        const solidAngle = (0.5 * RAD) ** 2 * Math.cos(altitudeDeg * RAD);
        const cosine =
          Math.cos(altitudeDeg * RAD) * Math.cos((azimuthDeg - framing.bearingDeg) * RAD);
        const onPlane = solidAngle * Math.max(0, cosine);
        const onDome = (solidAngle * (1 + cosine)) / 2;
        if (altitudeDeg > Math.max(0, edgeDeg)) {
          const luminance = sky({ azimuthDeg, altitudeDeg });
          sums.ground += luminance * solidAngle * Math.sin(altitudeDeg * RAD);
          sums.plane += luminance * onPlane;
          sums.dome += luminance * onDome;
        } else {
          sums.planeRest += onPlane;
          sums.domeRest += onDome;
        }
      }
    }
    const restLuminance = (0.2 * sums.ground) / Math.PI;
    const expected = {
      groundLux: sums.ground,
      planeLux: sums.plane + restLuminance * sums.planeRest,
      domeLux: sums.dome + restLuminance * sums.domeRest,
    };
    const found = subjectIlluminance({
      sun,
      beamNormalLux: 0,
      sky,
      skyline,
      groundReflectance: 0.2,
      facingDeg: framing.bearingDeg,
    });
    for (const key of ['groundLux', 'planeLux', 'domeLux'] as const) {
      expect(record(Math.log2(found[key] / expected[key]))).toBeLessThan(0.02);
    }
  }
});

const lit = (condition: SkyCondition, fromSunDeg: number, shaded: 'in the open' | 'shaded') => {
  const sun = sunAt(180, 45);
  const input = { sun, condition, dayOfYear: 93, elevationM: 0 };
  return subjectIlluminance({
    sun,
    beamNormalLux: shaded === 'shaded' ? 0 : daylightAt(input).beamNormalLux,
    sky: conditionSky(input),
    skyline: [],
    groundReflectance: 0.2,
    facingDeg: 180 + fromSunDeg,
  });
};

describe('sun at 45°, reflectance 0.2: within 0.6 stop of the published exposure guide', () => {
  // ANSI PH2.7-1986, Photographic Exposure Guide; the backlit face from a photographer's published
  // settings for a strongly backlit couple, 1/250 f/4 ISO 100 ("Photo session in bright sunlight").
  const toleranceStops = 0.6;
  const recordGuide = largestError('light on the subject, exposure guide', 'EV', {
    quantity: 'light on the subject',
    method: 'sun at 45°, ground of 20 %',
    comparedWith: 'Photographic Exposure Guide, ANSI PH2.7-1986, whole EV',
  });
  test.each([
    ['front-lit', 'clear', 0, 'in the open', 15],
    ['open shade, turned to the side', 'clear', 90, 'shaded', 12],
    ['open shade, turned away from the sun', 'clear', 180, 'shaded', 12],
    ['cloudy bright, no shadows', 'bright-overcast', 0, 'in the open', 13],
    ['cloudy bright, turned away', 'bright-overcast', 180, 'in the open', 13],
    ['heavy overcast', 'heavy-overcast', 0, 'in the open', 12],
    ['backlit face', 'clear', 180, 'in the open', 12],
  ] as const)('%s', (_name, condition, fromSunDeg, shaded, expectedEv) => {
    const ev = ev100FromIlluminance(lit(condition, fromSunDeg, shaded).planeLux);
    expect(recordGuide(ev - expectedEv)).toBeLessThan(toleranceStops);
  });
});

const sideLitAfter = (turn: number) => {
  const sun = sunAt((100 + turn) % 360, 25);
  return subjectIlluminance({
    sun,
    beamNormalLux: 50_000,
    sky: generalSky(12, sun),
    skyline: [],
    groundReflectance: 0.3,
    facingDeg: 40 + turn,
  });
};

test('turning the whole scene round the compass changes nothing', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 360, noNaN: true }), (turnDeg) => {
      expect(sideLitAfter(turnDeg).planeLux / sideLitAfter(0).planeLux).toBeCloseTo(1, 6);
      expect(sideLitAfter(turnDeg).domeLux / sideLitAfter(0).domeLux).toBeCloseTo(1, 6);
    }),
    { numRuns: 20 },
  );
});
