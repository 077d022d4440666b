import { describe, expect, test } from 'vitest';
import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import { lightAt } from '../../../src/core/spot/light-at.ts';
import { type LightColumnInput, lightColumn } from '../../../src/core/spot/light-column.ts';
import { seededRandom, seededScene } from '../../support/seeded-framings.ts';

const { skyline } = seededScene(seededRandom(7));
const DAY: Omit<LightColumnInput, 'condition'> = {
  place: { latitudeDeg: 50.1, longitudeDeg: -5.3, elevationM: 30 },
  zone: 'Europe/London',
  date: '2027-06-12',
  framing: {
    bearingDeg: 300,
    tiltDeg: 8,
    focalLengthMm: 24,
    sensorWidthMm: 36,
    sensorHeightMm: 24,
  },
  patch: { xFraction: -0.25, yFraction: 0.2, widthFraction: 0.1, heightFraction: 0.1 },
  skyline,
  groundReflectance: 0.2,
  stepMin: 10,
};

describe('the column is the light at each of its minutes', () => {
  test.each(SKY_CONDITIONS)('%s', (condition) => {
    const column = lightColumn({ ...DAY, condition });
    expect(column.instantMs.length).toBe(144);
    column.instantMs.forEach((instantMs, at) => {
      const light = lightAt({ ...DAY, instantMs, condition });
      const sky = light.skyInFrame!;
      const pairs: readonly (readonly [number | undefined, number])[] = [
        [column.sunAzimuthDeg[at], light.sun.azimuthDeg],
        [column.sunTrueAltitudeDeg[at], light.sun.trueAltitudeDeg],
        [column.sunApparentAltitudeDeg[at], light.sun.apparentAltitudeDeg],
        [column.discShare[at], light.subject.discShare],
        [column.minEv[at], sky.minEv],
        [column.darkEv[at], sky.darkEv],
        [column.meanEv[at], sky.meanEv],
        [column.brightEv[at], sky.brightEv],
        [column.maxEv[at], sky.maxEv],
        [column.patchEv[at], sky.patchEv],
        [column.skyShare[at], sky.skyShare],
        [column.sunInFrame[at], sky.sunInFrame ? 1 : 0],
        [column.frameSpreadStops[at], light.frameSpreadStops],
        [column.patchSpreadStops[at], light.patchSpreadStops],
        [column.ambientHiddenEv[at], light.ambientHiddenEv],
        [column.ambientOutEv[at], light.ambientOutEv],
        [column.ambientShadedEv[at], light.ambientShadedEv],
        [column.incidentEv[at], light.incidentEv],
        [column.ambientSpreadStops[at], light.daylight.spreadStops],
      ];
      for (const [found, expected] of pairs) {
        expect(Math.abs((found ?? NaN) - expected)).toBeLessThan(1e-9);
      }
    });
  });
});

test('the sun enters the frame in the evening and leaves it', () => {
  const { sunInFrame, instantMs } = lightColumn({ ...DAY, condition: 'clear', stepMin: 5 });
  const first = sunInFrame.indexOf(1);
  const last = sunInFrame.lastIndexOf(1);
  expect(new Date(instantMs[first] ?? NaN).getUTCHours()).toBeGreaterThanOrEqual(15);
  expect(last).toBeGreaterThan(first);
  expect(new Date(instantMs[last] ?? NaN).getUTCHours()).toBeLessThanOrEqual(20);
});

const steps = (date: string) => lightColumn({ ...DAY, date, condition: 'clear' }).instantMs.length;

test('a day of 25 hours has six steps more, one of 23 six less', () => {
  expect(steps('2027-10-31')).toBe(150);
  expect(steps('2027-03-28')).toBe(138);
});

test('a span of its own starts and ends where asked, past the date too', () => {
  const startMs = Date.UTC(2027, 5, 12, 22, 30);
  const column = lightColumn({
    ...DAY,
    condition: 'clear',
    startMs,
    endMs: startMs + 3_600_000,
    stepMin: 15,
  });
  expect([...column.instantMs]).toEqual([0, 15, 30, 45].map((min) => startMs + min * 60_000));
  const last = lightAt({ ...DAY, condition: 'clear', instantMs: startMs + 45 * 60_000 });
  expect(column.meanEv[3]).toBeCloseTo(last.skyInFrame?.meanEv ?? NaN, 9);
});

test('without sky in the frame its figures are missing and the face keeps its own', () => {
  const column = lightColumn({
    ...DAY,
    framing: { ...DAY.framing, tiltDeg: -60 },
    condition: 'clear',
    stepMin: 60,
  });
  expect(
    [...column.meanEv, ...column.patchEv, ...column.frameSpreadStops].every(Number.isNaN),
  ).toBe(true);
  expect([...column.ambientHiddenEv].every(Number.isFinite)).toBe(true);
});

test('a date that does not exist, or no step, gives an empty column', () => {
  expect(lightColumn({ ...DAY, date: '2027-02-30', condition: 'clear' }).instantMs.length).toBe(0);
  expect(lightColumn({ ...DAY, stepMin: 0, condition: 'clear' }).instantMs.length).toBe(0);
});

test('it crosses to another thread unchanged', () => {
  const column = lightColumn({ ...DAY, condition: 'haze', stepMin: 120 });
  expect(structuredClone(column)).toEqual(column);
});
