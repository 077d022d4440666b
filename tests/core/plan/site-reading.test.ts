import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { readLevel, type ReadOf, type ReadValue } from '../../../src/core/plan/site-reading.ts';
import { readingPrediction } from '../../../src/core/plan/reading-prediction.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';
import { defined } from '../../support/defined.ts';

const sky: ReadOf = { kind: 'sky', toward: { kind: 'patch' } };
type Alone = Exclude<ReadValue, { readonly kind: 'frame-off' }>;
const levelOf = (value: Alone, of: ReadOf = sky): number => {
  const level = readLevel(of, value);
  if (!level.ok) throw new Error(level.problem.sentence);
  return level.value.levelStops;
};
const refusal = (value: Alone, of: ReadOf = sky): string => {
  const level = readLevel(of, value);
  return level.ok ? `EV ${level.value.levelStops}` : level.problem.sentence;
};
const settings = (shutterS: number, fNumber: number, iso: number): Alone => ({
  kind: 'settings',
  shutterS,
  fNumber,
  iso,
  filterStops: 0,
});

const photo = (patchValue: number): Alone => ({
  kind: 'photo',
  shutterS: 1 / 250,
  fNumber: 8,
  iso: 100,
  filterStops: 0,
  patchValue,
});

describe('what a reading says', () => {
  // Published settings and the EV recomputed from them (trade reference); a tenth: names are rounded.
  test.each([
    ['C3, a city sky metered', 1 / 250, 8, 100, 14.0],
    ['C4, a storm sky', 1 / 250, 11, 200, 13.9],
    ['C5, a street sky saturated', 1 / 250, 16, 200, 15.0],
    ['A9, the shadow side of a backlit couple', 1 / 250, 4, 100, 12.0],
    ['E8, a sunset sky', 1 / 60, 5.6, 400, 8.9],
    ['A1, f/16 at 1/100', 1 / 100, 16, 100, 14.64],
  ])('%s', (_what, shutterS, fNumber, iso, ev) => {
    expect(Math.abs(levelOf(settings(shutterS, fNumber, iso)) - ev)).toBeLessThanOrEqual(0.11);
  });

  // A portrait behind ND (trade reference D10): settings EV 8.25 and three stops of filter.
  test('D10: an ND filter on the lens counts: ISO 64, 1/60, f/1.8 behind three stops is EV 11.25', () => {
    const level = levelOf({
      kind: 'settings',
      shutterS: 1 / 60,
      fNumber: 1.8,
      iso: 64,
      filterStops: 3,
    });
    expect(level).toBeCloseTo(11.25, 0);
    expect(Math.abs(level - 11.25)).toBeLessThan(0.15);
  });

  test('a meter’s f/16 + 0.4 at 1/250 is EV 16.4', () => {
    expect(
      levelOf({ kind: 'meter', fNumber: 16, tenths: 4, shutterS: 1 / 250, iso: 100 }),
    ).toBeCloseTo(16.4, 9);
  });

  test('a photo’s mid-grey patch (sRGB 118) says what its settings say, one at 165 a stop more', () => {
    expect(levelOf(photo(118))).toBeCloseTo(14, 1);
    // IEC 61966-2-1: 0.36 linear encodes to 162.
    expect(levelOf(photo(162)) - levelOf(photo(118))).toBeCloseTo(1, 1);
    expect(refusal(photo(255))).toMatch(/clipped/);
    expect(refusal(photo(0))).toMatch(/black/);
  });

  // C12: flash f/8 beside ambient f/11 meters f/13.9 together.
  test('C12: the ambient comes off a flash reading: f/13.9 with f/11.3 of ambient is f/8', () => {
    const of: ReadOf = {
      kind: 'flash',
      lightId: 'key',
      powerStops: 0,
      ambientFNumber: Math.sqrt(128),
    };
    const level = levelOf(
      { kind: 'meter', fNumber: 11, tenths: 6, shutterS: 1 / 250, iso: 100 },
      of,
    );
    expect(Math.abs(level - 6)).toBeLessThan(0.1);
  });

  test('what cannot be a reading is named, found and expected', () => {
    expect(refusal(settings(0, 8, 100))).toBe(
      'The reading’s shutter: expected more than 0, found 0.',
    );
    expect(refusal({ kind: 'ev', ev100: 80 })).toMatch(/EV 80.0; expected −12.0 to 26/);
    expect(refusal({ kind: 'ev', ev100: NaN })).toMatch(/NaN/);
    expect(refusal({ kind: 'meter', fNumber: 8, tenths: 12, shutterS: 1, iso: 100 })).toMatch(
      /0 to 9/,
    );
    const inSun: ReadOf = { kind: 'flash', lightId: 'key', powerStops: 0, ambientFNumber: 16 };
    expect(refusal({ kind: 'ev', ev100: 12 }, inSun)).toMatch(/flash meter/);
    expect(refusal({ kind: 'meter', fNumber: 8, tenths: 0, shutterS: 1, iso: 100 }, inSun)).toMatch(
      /Ambient alone read f\/16/,
    );
  });

  test('an EV read off settings rises by a stop for each stop of any dial', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -30, max: 12 }),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: -3, max: 18 }),
        (shutter, aperture, iso) => {
          const level = levelOf(
            settings(2 ** (shutter / 3), 2 ** (aperture / 6), 100 * 2 ** (iso / 3)),
          );
          expect(level).toBeCloseTo((aperture - shutter - iso) / 3, 9);
        },
      ),
    );
  });
});

const dome = (kind: 'camera' | 'sky', sun: 'out' | 'hidden' | null = null): ReadOf => ({
  kind: 'incident',
  toward: { kind },
  sun,
});

const flash = (powerStops: number): ReadOf => ({
  kind: 'flash',
  lightId: 'key',
  powerStops,
  ambientFNumber: null,
});

describe('what a reading should show', () => {
  const asked = demoMinute('quartet', '19:00', 'clear');
  const base = caseOfMinute(asked);
  const predicted = (of: ReadOf, from = base, instantMs = asked.instantMs): number => {
    const found = readingPrediction(from, of, instantMs);
    if (!found.ok) throw new Error(found.problem.sentence);
    return found.value.levelStops;
  };

  test('is what the setup shows of patch, frame and dome', () => {
    const { light } = base;
    expect(predicted(sky)).toBe(defined(light.skyInFrame).patchEv);
    expect(predicted({ kind: 'sky', toward: { kind: 'frame' } })).toBe(
      defined(light.skyInFrame).meanEv,
    );
    expect(predicted(dome('camera'))).toBeCloseTo(light.incidentEv, 6);
  });

  test('towards a direction lies between the darkest and the brightest of a frame that holds it', () => {
    const { skyInFrame } = base.light;
    const { bearingDeg, tiltDeg } = base.scene.framing;
    const ev = predicted({
      kind: 'sky',
      toward: { kind: 'direction', bearingDeg, tiltDeg: Math.max(tiltDeg, 12) },
    });
    expect(ev).toBeGreaterThan(defined(skyInFrame).minEv);
    expect(ev).toBeLessThan(defined(skyInFrame).maxEv);
  });

  test('towards the ground there is no sky', () => {
    const found = readingPrediction(
      base,
      { kind: 'sky', toward: { kind: 'direction', bearingDeg: 90, tiltDeg: -3 } },
      asked.instantMs,
    );
    expect(!found.ok && found.problem.sentence).toMatch(/the sky begins at/);
  });

  // Standard sky 3 of ISO 15469 (a 1.1, b −0.8), the same all round, integrated here: upwards a dome
  // takes half of all light there is and half of what falls on level ground less what comes off it.
  test('a dome turned up on a plain under a heavy overcast reads what the standard sky gives', () => {
    const grey = demoMinute('quartet', '14:00', 'heavy-overcast');
    const inTheHills = caseOfMinute(grey);
    const plain = { ...inTheHills, scene: { ...inTheHills.scene, skyline: [] } };
    const reflectance = plain.scene.groundReflectance;
    let [all, onGround] = [0, 0];
    for (let deg = 0.25; deg < 90; deg += 0.5) {
      const sine = Math.sin((deg * Math.PI) / 180);
      const ring = (1 + 1.1 * Math.exp(-0.8 / sine)) * Math.cos((deg * Math.PI) / 180);
      all += ring;
      onGround += ring * sine;
    }
    const ratio = all / onGround / 2 + reflectance + (1 - reflectance) / 2;
    const expected = Math.log2((plain.light.daylight.globalHorizontalLux * ratio * 100) / 330);
    // Both are sums over cells: a fiftieth of a stop.
    expect(Math.abs(predicted(dome('sky'), plain, grey.instantMs) - expected)).toBeLessThan(0.02);
  });

  test('a dome turned to a light on the sun’s side reads more than one on the other side', () => {
    const towards = (lightId: string, angleDeg: number): number =>
      predicted(
        { kind: 'incident', toward: { kind: 'light', lightId }, sun: null },
        {
          ...base,
          sources: base.sources.map((source) =>
            source.lightId === lightId
              ? { ...source, light: { ...source.light, angleDeg } }
              : source,
          ),
        },
      );
    const { sun } = base.light;
    // The camera’s right lies 90° clockwise of its bearing.
    const sunIsRight =
      Math.sin(((sun.azimuthDeg - base.scene.framing.bearingDeg) * Math.PI) / 180) > 0;
    const [right, left] = [towards('key', 90), towards('key', -90)];
    expect(right > left).toBe(sunIsRight);
    expect(Math.abs(right - left)).toBeGreaterThan(0.02);
    expect(towards('key', 0)).toBeCloseTo(base.light.incidentEv, 6);
  });

  test('between clouds it has to be said whether the sun was out', () => {
    const broken = demoMinute('two-violins', '09:30', 'broken-cloud');
    const from = caseOfMinute(broken);
    const unsaid = readingPrediction(from, dome('camera'), broken.instantMs);
    expect(!unsaid.ok && unsaid.problem.sentence).toMatch(/say which it was/);
    const out = predicted(dome('camera', 'out'), from, broken.instantMs);
    expect(out).toBeGreaterThan(predicted(dome('camera', 'hidden'), from, broken.instantMs) + 0.2);
  });

  test('a light alone meters what inverse square and power say (B8: twice as far is two stops less)', () => {
    expect(predicted(flash(-3)) - predicted(flash(0))).toBeCloseTo(-3, 9);
    const light = defined(base.question.lights[0]);
    const farther = {
      ...base,
      question: {
        ...base.question,
        lights: [{ ...light, distanceM: 2 * light.distanceM, sourceDiameterM: 0 }],
      },
    };
    const near = {
      ...base,
      question: { ...base.question, lights: [{ ...light, sourceDiameterM: 0 }] },
    };
    expect(predicted(flash(0), farther) - predicted(flash(0), near)).toBeCloseTo(-2, 9);
    const gone = readingPrediction(base, { ...flash(0), lightId: 'x' } as ReadOf, 0);
    expect(!gone.ok && gone.problem.sentence).toMatch(/not in this setup/);
  });
});
