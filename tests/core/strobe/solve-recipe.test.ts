import { describe, expect, test } from 'vitest';
import { formatAperture } from '../../../src/core/exposure/aperture-scale.ts';
import { formatShutter } from '../../../src/core/exposure/shutter-scale.ts';
import { judgeRecipe } from '../../../src/core/strobe/judge-recipe.ts';
import type { Recipe, RecipeInput, RecipeProblem } from '../../../src/core/strobe/recipe.ts';
import { solveRecipe } from '../../../src/core/strobe/solve-recipe.ts';
import { plainLight, plainSetup, withSkyEv } from '../../support/plain-setup.ts';

const recipeFor = (input: RecipeInput): Recipe => {
  const solved = solveRecipe(input);
  if (!solved.ok) throw new Error(JSON.stringify(solved.problem));
  return solved.value;
};
const problemFor = (input: RecipeInput): RecipeProblem => {
  const solved = solveRecipe(input);
  if (solved.ok) throw new Error(JSON.stringify(solved.value));
  return solved.problem;
};

describe('recipes that practitioners publish', () => {
  // 'Balancing twilight': f/8, 5.6, 4, 2.8 at 1/250 with flash 1/2, 1/4, 1/8, 1/16.
  test('as the sky falls by stops, aperture and flash fall together', () => {
    const guideNumberM = 8 * Math.SQRT2 * 2;
    const ladder = [14, 13, 12, 11].map((skyEv) =>
      recipeFor({
        ...withSkyEv(plainSetup, skyEv),
        hold: { stops: 0, under: 'patch' },
        lights: [{ ...plainLight, guideNumberM, stepStops: 1 }],
        camera: { ...plainSetup.camera, syncShutterS: 1 / 256 },
        pins: { shutterS: 1 / 256, iso: 100 },
      }),
    );
    expect(ladder.map(({ fNumber }) => formatAperture(fNumber))).toEqual([
      'f/8',
      'f/5.6',
      'f/4',
      'f/2.8',
    ]);
    expect(ladder.map(({ lights }) => lights[0]?.powerStops)).toEqual([-1, -2, -3, -4]);
    expect(new Set(ladder.map(({ shutterS }) => formatShutter(shutterS)))).toEqual(
      new Set(['1/250']),
    );
  });

  // EV 14, two under, 1/200, ISO 100: ND needed at f/2.8 … f/16 with the flash energy identical.
  test('the ND changes the aperture, never the flash: EV 14 two under at 1/200', () => {
    const rows = [
      { fNumber: 2.828, ndStops: 5.4 },
      { fNumber: 4, ndStops: 4.4 },
      { fNumber: 5.657, ndStops: 3.4 },
      { fNumber: 8, ndStops: 2.4 },
      { fNumber: 11.314, ndStops: 1.4 },
      { fNumber: 16, ndStops: 0.4 },
    ].map((pins) =>
      recipeFor({
        ...withSkyEv(plainSetup, 14),
        camera: { ...plainSetup.camera, syncShutterS: 1 / 200 },
        lights: [{ ...plainLight, guideNumberM: 60 }],
        pins: { ...pins, iso: 100, shutterS: 1 / 200 },
      }),
    );
    // The published densities have one decimal: within 0.05 stop of the sky.
    for (const row of rows) expect(Math.abs(row.skyStops + 2)).toBeLessThan(0.05);
    expect(new Set(rows.map(({ lights }) => lights[0]?.powerStops)).size).toBe(1);
    // Without the ND the meter reads the same aperture throughout: f/18.1 in the source.
    for (const { meterFNumber } of rows)
      expect(Math.abs(2 * Math.log2(meterFNumber / 18.1))).toBeLessThan(0.1);
  });

  // N = √(L S t 2^u/K) evaluated: the aperture without filters.
  test.each([
    { cdM2: 3000, perSecond: 200, hold: 2, fNumber: 21.909 },
    { cdM2: 800, perSecond: 160, hold: 1.5, fNumber: 10.637 },
    { cdM2: 200, perSecond: 200, hold: 2, fNumber: 5.657 },
  ])(
    '$cdM2 cd/m² at 1/$perSecond, $hold under: f/$fNumber',
    ({ cdM2, perSecond, hold, fNumber }) => {
      const recipe = recipeFor({
        ...withSkyEv(plainSetup, Math.log2((cdM2 * 100) / 12.5)),
        hold: { stops: hold, under: 'patch' },
        lights: [{ ...plainLight, guideNumberM: 80 }],
        pins: { shutterS: 1 / perSecond, iso: 100, ndStops: 0 },
        camera: { ...plainSetup.camera, syncShutterS: 1 / 200, slowestShutterS: 1 / 100 },
      });
      // Rounded to third stops: half of one.
      expect(Math.abs(2 * Math.log2(recipe.fNumber / fNumber))).toBeLessThanOrEqual(1 / 6 + 1e-3);
    },
  );
});

describe('how free values are chosen', () => {
  test('the aperture wished for comes first, by the ND owned', () => {
    const bright = {
      ...withSkyEv(plainSetup, 13),
      lights: [{ ...plainLight, guideNumberM: 80 }],
      ndStops: [1, 2, 3],
    };
    expect(formatAperture(recipeFor(bright).fNumber)).toBe('f/5.6');
    const wide = recipeFor({ ...bright, wish: { fNumber: 2 } });
    expect(formatAperture(wide.fNumber)).toBe('f/2');
    expect(wide.ndStops).toBe(5);
    expect(wide.ndFilters).toEqual([1, 2]);
  });

  test('filters are stacked two at most, three when they may be', () => {
    const bright = {
      ...withSkyEv(plainSetup, 13),
      lights: [{ ...plainLight, guideNumberM: 80 }],
      wish: { fNumber: 2 },
      ndStops: [2, 2, 2],
    };
    expect(recipeFor(bright).ndFilters).toHaveLength(2);
    expect(recipeFor({ ...bright, maxStacked: 3 }).ndFilters).toHaveLength(3);
  });

  test('power at the sync shutter before ISO, ISO once the head loafs', () => {
    // EV 8 + 2 at f/5.6: 1/32 at ISO 100. GN 12 at 2 m works near full: the shutter goes to sync.
    const weak = recipeFor({
      ...withSkyEv(plainSetup, 8),
      lights: [{ ...plainLight, guideNumberM: 12 }],
    });
    expect(formatShutter(weak.shutterS)).toBe('1/250');
    // GN 80 at 1 m never leaves 1/16 and below: base ISO and a slower shutter.
    const strong = recipeFor({
      ...withSkyEv(plainSetup, 8),
      lights: [{ ...plainLight, guideNumberM: 80, distanceM: 3, minPowerStops: -10 }],
    });
    expect(strong.iso).toBe(100);
    expect(formatShutter(strong.shutterS)).toBe('1/30');
  });

  test('a camera in half stops gets half stops of aperture', () => {
    for (const skyEv of [10, 10.2, 10.4, 10.6, 10.8]) {
      const recipe = recipeFor({
        ...withSkyEv(plainSetup, skyEv),
        camera: { ...plainSetup.camera, syncShutterS: 1 / 256, step: 'half' },
      });
      const clicks = 4 * Math.log2(recipe.fNumber);
      expect(Math.abs(clicks - Math.round(clicks))).toBeLessThan(1e-9);
    }
  });

  test('stated ends are used as stated and never exceeded', () => {
    const recipe = recipeFor({ ...plainSetup, wish: { fNumber: 1.2 } });
    expect(recipe.shutterS).toBeGreaterThanOrEqual(1 / 250 - 1e-12);
    expect(recipe.fNumber).toBeGreaterThanOrEqual(1.4 - 1e-12);
    const nearSync = recipeFor({ ...withSkyEv(plainSetup, 12.4), pins: { iso: 100 } });
    expect(nearSync.shutterS).toBeCloseTo(1 / 250, 12);
  });
});

describe('ratios', () => {
  const lit: RecipeInput = {
    ...plainSetup,
    ambientOnSubjectEv: 9,
    lights: [
      { ...plainLight, guideNumberM: 60 },
      { ...plainLight, role: 'fill', stops: -1.6, guideNumberM: 60, distanceM: 3 },
      { ...plainLight, role: 'rim', stops: 0.5, guideNumberM: 45, distanceM: 3 },
    ],
  };

  test('every role lands on its own stops, the fill with the ambient, the key with both', () => {
    const recipe = recipeFor(lit);
    // Heads in tenths: half a tenth each.
    expect(Math.abs(recipe.keyStops)).toBeLessThan(0.06);
    expect(Math.abs((recipe.fillStops ?? 9) + 1.6)).toBeLessThan(0.06);
    expect(Math.abs((recipe.lights[2]?.levelStops ?? 9) - 0.5)).toBeLessThan(0.06);
  });

  const weakKey = (fillGuideNumberM: number): number =>
    judgeRecipe({
      ...lit,
      lights: [
        { ...plainLight, guideNumberM: 20 },
        { ...plainLight, role: 'fill', stops: -2, guideNumberM: fillGuideNumberM },
      ],
    }).reachEv;

  test('a fill far stronger than its ratio does not lift the reach of the key', () => {
    expect(weakKey(400)).toBeCloseTo(weakKey(40), 9);
    // GN 20 at 2 m, 1/250: 25 000 = 2^14.61; the fill may carry a quarter: − log2(1 − 1/4); hold 2.
    expect(weakKey(40)).toBeCloseTo(Math.log2(25000 / 0.75) - 2, 9);
  });

  test('the role that runs out first is named', () => {
    const weakFill = {
      ...lit,
      lights: lit.lights.map((light) =>
        light.role === 'fill' ? { ...light, guideNumberM: 6 } : light,
      ),
    };
    expect(problemFor(withSkyEv(weakFill, 14)).role).toBe('fill');
    expect(judgeRecipe(weakFill).limitingRole).toBe('fill');
  });

  test('ambient above the fill’s ratio adds to a weak key, the fill gives nothing', () => {
    // GN 4 at 2 m, 1/250: 1000; ambient EV 10: 1024; fill 2 stops under would need EV 8 or more of
    // its own only from 4096 on: the key ends at 2024 = 2^10.98, hold 2.
    const judged = judgeRecipe({
      ...plainSetup,
      ambientOnSubjectEv: 10,
      lights: [
        { ...plainLight, guideNumberM: 4 },
        { ...plainLight, role: 'fill', stops: -2, guideNumberM: 60 },
      ],
    });
    expect(judged.reachEv).toBeCloseTo(Math.log2(2024) - 2, 9);
  });

  test('the meter’s share of flash: ambient f/11 and flash f/8 is 33 % (a meter’s percent flash)', () => {
    // Key on mid-grey with ambient log2(3/2) under it: two thirds ambient, one third flash.
    const recipe = recipeFor({
      ...plainSetup,
      ambientOnSubjectEv: 14 + Math.log2(2 / 3),
      unlitUnderStops: 0,
      lights: [{ ...plainLight, minPowerStops: -10 }],
    });
    // The published pair is nominal; dials in thirds and heads in tenths leave a few per cent.
    expect(Math.abs(recipe.flashShare - 1 / 3)).toBeLessThan(0.08);
    expect(recipe.flashShare).toBeCloseTo(
      (recipe.lights[0]?.flashMeterFNumber ?? 0) ** 2 / recipe.meterFNumber ** 2,
      9,
    );
  });

  test('two rims stand alone, two keys add', () => {
    const rim = { ...plainLight, role: 'rim', guideNumberM: 40 } as const;
    const key = { ...plainLight, guideNumberM: 200 };
    const one = judgeRecipe({ ...plainSetup, lights: [key, rim] }).reachEv;
    expect(judgeRecipe({ ...plainSetup, lights: [key, rim, rim] }).reachEv).toBeCloseTo(one, 9);
    const single = judgeRecipe(plainSetup).reachEv;
    expect(judgeRecipe({ ...plainSetup, lights: [plainLight, plainLight] }).reachEv).toBeCloseTo(
      single + 1,
      9,
    );
  });
});

describe('the hold’s references', () => {
  const input: RecipeInput = { ...plainSetup, sky: { patchEv: 12, meanEv: 11.1 }, incidentEv: 8.2 };

  test('each lands under what it is counted from, the others beside it', () => {
    const patch = recipeFor(input);
    expect(Math.abs(patch.skyStops + 2)).toBeLessThan(1 / 6 + 1e-6);
    expect(patch.frameStops - patch.patchStops).toBeCloseTo(-0.9, 9);
    expect(patch.incidentStops - patch.patchStops).toBeCloseTo(-3.8, 9);
    const frame = recipeFor({ ...input, hold: { stops: 1.1, under: 'frame' } });
    const incident = recipeFor({ ...input, hold: { stops: 5.8, under: 'incident' } });
    // 2.0 under the patch = 1.1 … here 14 − 11.1 = 2.9 under the frame = 5.8 under incident.
    expect(incident.cameraEv).toBeCloseTo(patch.cameraEv, 9);
    expect(Math.abs(frame.frameStops + 1.1)).toBeLessThan(1 / 6 + 1e-6);
    expect(frame.skyStops).toBe(frame.frameStops);
  });

  test('a frame without a patch counts from the whole sky in it', () => {
    const recipe = recipeFor({ ...input, sky: { patchEv: null, meanEv: 12 } });
    expect(recipe.cameraEv).toBeCloseTo(recipeFor(input).cameraEv, 9);
  });
});

describe('the first broken rule is named, in order', () => {
  const reachEv = judgeRecipe(plainSetup).reachEv;

  test('a sky above the reach, by how many stops', () => {
    const problem = problemFor(withSkyEv(plainSetup, reachEv + 1.5));
    expect(problem.kind).toBe('sky-above-reach');
    expect(problem.shortByStops).toBeCloseTo(1.5, 9);
    expect(problem.role).toBe('key');
    expect(
      problemFor({ ...withSkyEv(plainSetup, reachEv + 1), ambientOnSubjectEv: 14.5 }).kind,
    ).toBe('sky-above-reach');
  });

  test('ambient that lights the face: sky EV 12 held 2 under allows ambient EV 12, no more', () => {
    expect(solveRecipe({ ...plainSetup, ambientOnSubjectEv: 11.99 }).ok).toBe(true);
    const problem = problemFor({ ...plainSetup, ambientOnSubjectEv: 12.7 });
    expect(problem.kind).toBe('ambient-lights-the-face');
    expect(problem.shortByStops).toBeCloseTo(0.7, 9);
  });

  test('under broken cloud the face is judged with the sun out, the reach with it hidden', () => {
    const hidden = { ...plainSetup, ambientOnSubjectEv: 8 };
    const withSun = { ...hidden, ambientOutEv: 12.5 };
    expect(problemFor(withSun).kind).toBe('ambient-lights-the-face');
    expect(judgeRecipe(withSun).reachEv).toBe(judgeRecipe(hidden).reachEv);
  });

  test('a head too strong at its lowest power', () => {
    const problem = problemFor({
      ...withSkyEv(plainSetup, 5),
      lights: [{ ...plainLight, guideNumberM: 60, distanceM: 1, minPowerStops: -4 }],
    });
    expect(problem.kind).toBe('head-too-strong');
    expect(problem.role).toBe('key');
    // GN 60 at 1/16: 225 in f-number squared, at 1/30 EV 12.72; wanted EV 7: 5.7 stops over.
    expect(Math.abs(problem.shortByStops - (Math.log2(225 * 30) - 7))).toBeLessThan(1e-6);
  });

  test('a fill that ambient has already passed', () => {
    const problem = problemFor({
      ...plainSetup,
      ambientOnSubjectEv: 11.5,
      lights: [plainLight, { ...plainLight, role: 'fill', stops: -3 }],
    });
    expect(problem.kind).toBe('head-too-strong');
    expect(problem.role).toBe('fill');
    expect(problem.fixes.map(({ kind }) => kind)).toContain('leave-out');
  });

  test('no aperture small enough and no ND: what to buy', () => {
    const problem = problemFor({
      ...withSkyEv(plainSetup, 12),
      lens: { minFNumber: 1.4, maxFNumber: 5 },
    });
    expect(problem).toMatchObject({ kind: 'no-setting', limit: 'too-bright' });
    // EV 14 at 1/250 is f/8.1; f/5 is 1.39 stops wider: the 2-stop ND.
    expect(problem.fixes).toEqual([expect.objectContaining({ kind: 'nd', value: 2 })]);
  });

  test('too dark for the slowest shutter, widest aperture and highest ISO', () => {
    const problem = problemFor({
      ...withSkyEv(plainSetup, -4),
      lights: [{ ...plainLight, guideNumberM: 0.2 }],
    });
    expect(problem).toMatchObject({ kind: 'no-setting', limit: 'too-dark' });
    // f/1.4, 1/30, ISO 6400 opens to EV −0.12; wanted EV −2: 1.88 stops.
    expect(Math.abs(problem.shortByStops - (2 + Math.log2((1.96 * 30) / 64)))).toBeLessThan(1e-9);
  });
});

describe('pins', () => {
  test('a pinned power makes the shutter follow', () => {
    const free = recipeFor(plainSetup);
    const power = (free.lights[0]?.powerStops ?? 0) + 1;
    const pinned = recipeFor({ ...plainSetup, pins: { powerStops: [power] } });
    expect(pinned.lights[0]?.powerStops).toBe(power);
    // Heads in tenths and dials in thirds: a stop of power is a stop of shutter within both.
    expect(Math.abs(Math.log2(pinned.shutterS / free.shutterS) - 1)).toBeLessThan(0.4);
  });

  test('pinned values come back as they were pinned', () => {
    const pins = { shutterS: 1 / 125, fNumber: 5.6, iso: 200 };
    const recipe = recipeFor({
      ...withSkyEv(plainSetup, Math.log2(5.6 ** 2 * 125) - 1 - 2),
      pins,
    });
    expect(recipe.shutterS).toBeCloseTo(pins.shutterS, 12);
    expect(recipe.fNumber).toBeCloseTo(pins.fNumber, 12);
    expect(recipe.iso).toBeCloseTo(pins.iso, 9);
  });

  test('too many pins: each that ends it is named with what it costs', () => {
    const problem = problemFor({
      ...plainSetup,
      lights: [{ ...plainLight, guideNumberM: 80 }],
      pins: { shutterS: 1 / 250, fNumber: 4, iso: 100, ndStops: 0 },
      ndStops: [2],
    });
    expect(problem.kind).toBe('no-setting');
    // EV 14 wanted, f/4 at 1/250 is 11.97: 2.03 stops. A faster shutter would be above sync, a
    // lower ISO does not exist: aperture or ND.
    expect(Math.abs(problem.shortByStops - (14 - Math.log2(16 * 250)))).toBeLessThan(1e-9);
    expect(problem.fixes.map(({ kind }) => kind).toSorted()).toEqual([
      'unpin-aperture',
      'unpin-nd',
    ]);
    for (const { value } of problem.fixes) expect(value).toBeCloseTo(problem.shortByStops, 9);
  });

  test('a pinned shutter slower than sync costs reach stop for stop', () => {
    const reachEv = judgeRecipe(plainSetup).reachEv;
    const slow = { ...plainSetup, pins: { shutterS: 1 / 125 } };
    expect(judgeRecipe(slow).reachEv).toBeCloseTo(reachEv - 1, 9);
    const problem = problemFor(withSkyEv(slow, reachEv - 0.4));
    expect(problem.kind).toBe('sky-above-reach');
    expect(problem.fixes.map(({ kind }) => kind)).toContain('unpin-shutter');
    expect(problem.fixes.map(({ kind }) => kind)).not.toContain('sync-shutter');
  });

  test('a pin that does not exist is named', () => {
    const problem = problemFor({ ...plainSetup, pins: { fNumber: 1 } });
    expect(problem.kind).toBe('no-setting');
    expect(problem.fixes).toEqual([expect.objectContaining({ kind: 'unpin-aperture' })]);
  });
});

describe('high-speed sync', () => {
  const camera = { ...plainSetup.camera, fastestShutterS: 1 / 8000 };

  test('only a pin asks for it, or leave given; its reach is two stops less at every shutter', () => {
    const reachEv = judgeRecipe({ ...plainSetup, camera }).reachEv;
    for (const perSecond of [500, 1000, 2000, 4000]) {
      const pinned = judgeRecipe({ ...plainSetup, camera, pins: { shutterS: 1 / perSecond } });
      expect(pinned.reachEv).toBeCloseTo(reachEv - 2, 9);
    }
    const measured = { ...camera, hssLossStops: 1.5 };
    expect(
      judgeRecipe({ ...plainSetup, camera: measured, pins: { shutterS: 1 / 1000 } }).reachEv,
    ).toBeCloseTo(reachEv - 1.5, 9);
  });

  test('with leave it opens up to the wish without ND', () => {
    const bright = { ...withSkyEv(plainSetup, 10), wish: { fNumber: 2 } };
    const plain = recipeFor({ ...bright, camera });
    expect(plain.highSpeedSync).toBe(false);
    const free = recipeFor({ ...bright, camera: { ...camera, allowHss: true } });
    expect(free.highSpeedSync).toBe(true);
    expect(formatAperture(free.fNumber)).toBe('f/2');
  });

  test('a camera without it says which pin asks too much', () => {
    const problem = problemFor({ ...plainSetup, pins: { shutterS: 1 / 1000 } });
    expect(problem.fixes).toEqual([expect.objectContaining({ kind: 'unpin-shutter' })]);
  });
});

describe('bad input', () => {
  test.each([
    { change: { lens: { minFNumber: 0, maxFNumber: 22 } }, says: 'lens.minFNumber' },
    { change: { lights: [{ ...plainLight, guideNumberM: 0 }] }, says: 'guideNumberM' },
    { change: { lights: [{ ...plainLight, distanceM: Number.NaN }] }, says: 'distanceM' },
    { change: { lights: [] }, says: 'lights' },
    { change: { sky: { patchEv: Number.NaN, meanEv: 12 } }, says: 'sky.patchEv' },
    { change: { ndStops: [-1] }, says: 'ndStops' },
    { change: { pins: { powerStops: [0.5] } }, says: 'pins.powerStops' },
    { change: { ambientOnSubjectEv: Number.POSITIVE_INFINITY }, says: 'ambientOnSubjectEv' },
  ])('a wrong $says is named with what was found', ({ change, says }) => {
    const problem = problemFor({ ...plainSetup, ...change });
    expect(problem.kind).toBe('bad-input');
    expect(problem.sentences?.join()).toContain(says);
    expect(problem.sentences?.join()).toContain('found');
    expect(judgeRecipe({ ...plainSetup, ...change }).verdict).toBe('bad-input');
  });
});
