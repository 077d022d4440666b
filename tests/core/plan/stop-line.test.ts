import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { StopOrder } from '../../../src/core/plan/stop-ladder.ts';
import { stopLine, type StopLineGap, type StopSetting } from '../../../src/core/plan/stop-line.ts';
import { attemptRecipe } from '../../../src/core/strobe/attempt-recipe.ts';
import { runForward } from '../../../src/core/strobe/run-forward.ts';
import type { Recipe, RecipeInput } from '../../../src/core/strobe/recipe.ts';
import type { Result } from '../../../src/core/units/result.ts';
import { formatAperture } from '../../../src/core/exposure/aperture-scale.ts';
import { formatIso } from '../../../src/core/exposure/iso-scale.ts';
import { formatShutter } from '../../../src/core/exposure/shutter-scale.ts';
import { plainLight, plainSetup, withSkyEv } from '../../support/plain-setup.ts';

const darker = (input: RecipeInput, stops: number): RecipeInput => ({
  ...withSkyEv(input, input.sky.meanEv - stops),
  ambientOnSubjectEv: input.ambientOnSubjectEv - stops,
  incidentEv: input.incidentEv - stops,
});

const recipeOf = (input: RecipeInput): Recipe => {
  const answer = attemptRecipe(input);
  if (!answer.ok) throw new Error(`expected a recipe, found ${answer.problem.kind}`);
  return answer.value;
};

type Line = Result<StopSetting, StopLineGap>;

/** Every line as the sky falls (or rises) stop by stop. */
function ladder(input: RecipeInput, stops: readonly number[], order: StopOrder): readonly Line[] {
  const start = recipeOf(input);
  let before = start;
  return stops.map((stop) => {
    const line = stopLine({ start, before, input: darker(input, -stop), stops: stop, order });
    if (line.ok) before = line.value.recipe;
    return line;
  });
}

const shown = (line: Line | undefined): string => {
  if (line?.ok !== true) return 'none';
  const { recipe } = line.value;
  const powers = recipe.lights.map(({ powerStops }) => Number(powerStops.toFixed(1))).join(' ');
  return `${formatAperture(recipe.fNumber)} ${formatShutter(recipe.shutterS)} ${formatIso(recipe.iso)} ${powers}`;
};

/** f/8 at 1/250, ISO 100 and half power, as the ladder of E7 begins; widest f/2.8, slowest 1/60. */
const e7: RecipeInput = {
  ...plainSetup,
  hold: { stops: 2, under: 'patch' },
  sky: { patchEv: 12, meanEv: 12 },
  lights: [{ ...plainLight, guideNumberM: Math.sqrt(2 * 64) * 2, distanceM: 2 }],
  camera: { syncShutterS: 1 / 250, slowestShutterS: 1 / 60, baseIso: 100, maxIso: 400 },
  lens: { minFNumber: 2.8, maxFNumber: 22 },
  wish: { fNumber: 8 },
};

describe('what is changed stop by stop as the sky falls', () => {
  // Trade example E7: “Balancing twilight”, a practitioner’s page.
  test('E7: aperture with the flash, then the shutter with the flash as it is, then ISO', () => {
    expect(shown({ ok: true, value: { recipe: recipeOf(e7) } as StopSetting })).toBe(
      'f/8 1/250 ISO 100 -1',
    );
    const lines = ladder(e7, [-1, -2, -3, -4, -5, -6, -7, -8], 'aperture-first');
    expect(lines.map(shown)).toEqual([
      'f/5.6 1/250 ISO 100 -2',
      'f/4 1/250 ISO 100 -3',
      'f/2.8 1/250 ISO 100 -4',
      'f/2.8 1/125 ISO 100 -4',
      'f/2.8 1/60 ISO 100 -4',
      'f/2.8 1/60 ISO 200 -5',
      'f/2.8 1/60 ISO 400 -6',
      'none',
    ]);
    const fourth = lines[3];
    expect(fourth?.ok === true && fourth.value.heads).toEqual([]);
    expect(fourth?.ok === true && fourth.value.limits).toEqual([
      { kind: 'dial-at-end', dial: 'aperture' },
    ]);
    const last = lines[7];
    expect(last?.ok === false && last.problem.problem).toMatchObject({
      kind: 'no-setting',
      limit: 'too-dark',
    });
  });

  // Trade example E6: f/11, ISO 160 and the strobe held while 1/125 became 1/50 (a practitioner’s page).
  test('E6: shutter first floats the shutter under a strobe that stays as it is', () => {
    const e6: RecipeInput = {
      ...withSkyEv(e7, 7 + 7 - 2 / 3 - 2),
      lights: [{ ...plainLight, guideNumberM: Math.sqrt((2 * 128) / 1.6) * 2 }],
      camera: { syncShutterS: 1 / 125, slowestShutterS: 1 / 30, baseIso: 160, maxIso: 6400 },
      wish: { fNumber: 11 },
    };
    const start = recipeOf(e6);
    expect(formatShutter(start.shutterS)).toBe('1/125');
    const lines = ladder(e6, [-1 / 3, -2 / 3, -4 / 3, -3], 'shutter-first');
    expect(lines.slice(0, 3).map(shown)).toEqual([
      'f/11 1/100 ISO 160 -1',
      'f/11 1/80 ISO 160 -1',
      'f/11 1/50 ISO 160 -1',
    ]);
    const third = lines[3];
    expect(shown(third)).toBe('f/8 1/30 ISO 160 -2');
    expect(third?.ok === true && third.value.heads).toMatchObject([{ light: 0 }]);
    expect(third?.ok === true && third.value.limits).toEqual([
      { kind: 'dial-at-end', dial: 'shutter' },
    ]);
  });

  test('ND comes off first, the heads down by the same stops, the aperture left alone', () => {
    const behindNd: RecipeInput = {
      ...e7,
      ndStops: [1, 2],
      wish: { fNumber: 4 },
      lens: { minFNumber: 4, maxFNumber: 4.1 },
    };
    const start = recipeOf(behindNd);
    expect(start.ndStops).toBe(2);
    const lines = ladder(behindNd, [-1, -2, -3], 'aperture-first');
    const seen = lines.map((line) =>
      line.ok ? [line.value.recipe.ndStops, line.value.recipe.lights[0]?.powerStops] : null,
    );
    expect(seen).toEqual([
      [1, -2],
      [0, -3],
      [0, -3],
    ]);
    const [first, , third] = lines;
    expect(first?.ok === true && first.value.recipe.ndFilters).toEqual([0]);
    expect(third?.ok === true && third.value.dials.map(({ dial }) => dial)).toEqual(['shutter']);
  });

  test('heads are left alone while the shutter is turned, where what the ambient lost is within a dial', () => {
    const input: RecipeInput = { ...e7, pins: { fNumber: 8 }, ambientOnSubjectEv: 11 };
    const start = recipeOf(input);
    const now = { ...darker(input, 1), ambientOnSubjectEv: 9 };
    // A key solved afresh would take up the lost sixteenth of mid-grey.
    const afresh = recipeOf({ ...now, pins: { ...input.pins, shutterS: 1 / 128 } });
    expect(afresh.lights[0]?.powerStops).not.toBe(start.lights[0]?.powerStops);
    const line = stopLine({ start, before: start, input: now, stops: -1, order: 'aperture-first' });
    expect(line.ok && line.value.heads).toEqual([]);
    expect(line.ok && line.value.dials.map(({ dial }) => dial)).toEqual(['shutter']);
  });

  test('a rising sky takes the ladder back: the shutter before the aperture', () => {
    const low = darker(e7, 4);
    const start = { ...recipeOf(e7), fNumber: 2 ** 1.5, shutterS: 1 / 128 };
    const pinned = recipeOf({
      ...low,
      pins: { fNumber: start.fNumber, shutterS: start.shutterS, iso: 100 },
    });
    const line = stopLine({
      start: pinned,
      before: pinned,
      input: darker(low, -1),
      stops: 1,
      order: 'aperture-first',
    });
    expect(shown(line)).toBe('f/2.8 1/250 ISO 100 -4');
    const second = stopLine({
      start: pinned,
      before: pinned,
      input: darker(low, -2),
      stops: 2,
      order: 'aperture-first',
    });
    expect(shown(second)).toBe('f/4 1/250 ISO 100 -3');
  });

  test('a head that cannot go lower is named, and the shutter takes over', () => {
    const strong: RecipeInput = {
      ...e7,
      lights: [{ ...plainLight, guideNumberM: Math.sqrt(2 * 64) * 2, minPowerStops: -2 }],
    };
    const lines = ladder(strong, [-1, -2, -3], 'aperture-first');
    expect(lines.map(shown)).toEqual([
      'f/5.6 1/250 ISO 100 -2',
      'f/5.6 1/125 ISO 100 -2',
      'f/5.6 1/60 ISO 100 -2',
    ]);
    const second = lines[1];
    expect(second?.ok === true && second.value.limits).toContainEqual({
      kind: 'head-at-lowest',
      lights: [0],
    });
    const [fourth] = ladder(strong, [-4], 'aperture-first');
    expect(fourth?.ok).toBe(false);
    expect(fourth?.ok === false && fourth.problem.limits).toEqual([
      { kind: 'head-at-lowest', lights: [0] },
    ]);
  });

  test('what a head can follow is counted over ND and aperture together', () => {
    const behindNd: RecipeInput = {
      ...e7,
      ndStops: [2],
      wish: { fNumber: 4 },
      lights: [{ ...plainLight, guideNumberM: Math.sqrt(2 * 64) * 2, minPowerStops: -3 }],
    };
    expect(recipeOf(behindNd)).toMatchObject({ ndStops: 2, lights: [{ powerStops: -1 }] });
    const [line] = ladder(behindNd, [-3], 'aperture-first');
    expect(shown(line)).toBe('f/4 1/125 ISO 100 -3');
    expect(line?.ok === true && line.value.recipe.ndStops).toBe(0);
  });

  test('what is pinned stays, and the line says so', () => {
    const pinned: RecipeInput = { ...e7, pins: { fNumber: 8 } };
    const [first, second] = ladder(pinned, [-1, -3], 'aperture-first');
    expect(shown(first)).toBe('f/8 1/125 ISO 100 -1');
    expect(first?.ok === true && first.value.limits).toEqual([
      { kind: 'dial-pinned', dial: 'aperture' },
    ]);
    expect(shown(second)).toBe('f/8 1/60 ISO 200 -2');
  });

  test('every head moves in its own step, and every line lands by light added up afresh', () => {
    const arbitrary = fc.record({
      skyEv: fc.double({ min: 10, max: 12, noNaN: true }),
      ambientUnder: fc.double({ min: 3, max: 8, noNaN: true }),
      keyStep: fc.constantFrom(0.1, 1 / 3, 0.5),
      fillStep: fc.constantFrom(0.1, 0.2, 1 / 3),
      order: fc.constantFrom<StopOrder>('aperture-first', 'shutter-first'),
      nd: fc.constantFrom([], [3], [1, 2]),
    });
    let seen = 0;
    fc.assert(
      fc.property(arbitrary, ({ skyEv, ambientUnder, keyStep, fillStep, order, nd }) => {
        const input: RecipeInput = {
          ...withSkyEv(plainSetup, skyEv),
          hold: { stops: 1, under: 'patch' },
          ambientOnSubjectEv: skyEv - ambientUnder,
          ndStops: nd,
          lights: [
            { ...plainLight, stepStops: keyStep },
            { ...plainLight, role: 'fill', stops: -2, stepStops: fillStep, guideNumberM: 25 },
          ],
        };
        if (!attemptRecipe(input).ok) return;
        ladder(input, [-1, -2, -3, -4, -5, -6], order).forEach((line, place) => {
          if (!line.ok) return;
          seen += 1;
          const { recipe } = line.value;
          const now = darker(input, place + 1);
          const landing = runForward(now, recipe);
          // A sixth of a stop: half of a third-stop dial.
          expect(Math.abs(landing.patchStops + 1)).toBeLessThan(1 / 6 + 1e-5);
          expect(Math.abs(landing.lights[0]?.faceStops ?? NaN)).toBeLessThan(1 / 6 + 1e-5);
          recipe.lights.forEach(({ powerStops }, light) => {
            const steps = powerStops / (light === 0 ? keyStep : fillStep);
            const isEnd = powerStops === -8 || powerStops === 0;
            expect(isEnd || Math.abs(steps - Math.round(steps)) < 1e-4).toBe(true);
          });
        });
      }),
      { numRuns: 60 },
    );
    expect(seen).toBeGreaterThan(200);
  });
});
