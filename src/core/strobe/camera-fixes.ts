import { applyFix } from './apply-fix.ts';
import type { UnfixedProblem } from './attempt-recipe.ts';
import { fixThreshold, roundDownTo, roundUpTo } from './fix-threshold.ts';
import { judgeRecipe } from './judge-recipe.ts';
import type { Fix, FixKind, RecipeInput } from './recipe.ts';

/** Holds and margins are spoken of in tenths. */
const TENTH = 0.1;
/** Fastest true sync of any leaf shutter, 1/2000 by name; in third stops from 1 s. [lightingPractice] */
const FASTEST_SYNC_CLICKS = 33;
/** Longest time on a dial, 30 s by name. [iso516] */
const LONGEST_CLICKS = 15;
/** Darker than this no panel makes a face in daylight, and no sky is asked for. [lightingPractice] */
const DEEPEST_SHADE_STOPS = 4;
const DEEPEST_HOLD_STOPS = 8;
/** Densest single ND in general use. [practitionerPages] */
const DENSEST_ND_STOPS = 10;

const stopsFix = (kind: FixKind, value: number): Fix => ({ kind, value, unit: 'stops' });

/** Fewer stops under, rounded down to a tenth; none when nothing would be left of the hold. */
export const lighterHoldFix = (input: RecipeInput, problem: UnfixedProblem): Fix | null => {
  const value = roundDownTo(input.hold.stops - problem.shortByStops, TENTH);
  return value > 0 ? stopsFix('hold', value) : null;
};

/** More stops under, rounded up to a tenth: a darker setting, against which ambient counts less. */
export const darkerHoldFix = (input: RecipeInput, problem: UnfixedProblem): Fix | null => {
  const { stops } = input.hold;
  const enough = fixThreshold({ failsAt: stops, worksAt: stops + DEEPEST_HOLD_STOPS }, (value) => {
    const { verdict } = judgeRecipe(applyFix(input, stopsFix('hold', value)));
    return verdict !== problem.kind;
  });
  return enough === null ? null : stopsFix('hold', roundUpTo(enough, TENTH));
};

/** A smaller margin between key and unlit face, rounded down to a tenth. */
export const marginFix = (input: RecipeInput, problem: UnfixedProblem): Fix | null => {
  const value = roundDownTo(input.unlitUnderStops - problem.shortByStops, TENTH);
  return value > 0 ? stopsFix('unlit-under', value) : null;
};

/** Ambient to take off the subject, by a panel, a turn or the sun's going, rounded up to a tenth. */
export const shadeFix = (problem: UnfixedProblem): Fix | null => {
  const value = roundUpTo(problem.shortByStops, TENTH);
  return value <= DEEPEST_SHADE_STOPS ? stopsFix('shade', value) : null;
};

const syncFix = (clicks: number): Fix => ({
  kind: 'sync-shutter',
  value: 2 ** (-clicks / 3),
  unit: 's',
});

/** The slowest sync in third stops with which the sky comes within reach; else the fastest there is. */
export const fasterSyncFix = (input: RecipeInput): Fix | null => {
  if (input.pins?.shutterS !== undefined) return null;
  let click = Math.floor(-Math.log2(input.camera.syncShutterS) * 3 + 0.5) + 1;
  if (click > FASTEST_SYNC_CLICKS) return null;
  while (click < FASTEST_SYNC_CLICKS) {
    if (judgeRecipe(applyFix(input, syncFix(click))).verdict !== 'sky-above-reach') break;
    click += 1;
  }
  return syncFix(click);
};

/** The fastest slowest shutter in third stops with which the setup works. */
export const slowerShutterFix = (input: RecipeInput): Fix | null => {
  if (input.pins?.shutterS !== undefined) return null;
  let click = Math.floor(Math.log2(input.camera.slowestShutterS) * 3 + 0.5) + 1;
  for (; click <= LONGEST_CLICKS; click += 1) {
    const fix: Fix = { kind: 'slower-shutter', value: 2 ** (click / 3), unit: 's' };
    if (judgeRecipe(applyFix(input, fix)).verdict === 'works') return fix;
  }
  return null;
};

/** The thinnest ND in whole stops that is missing from the kit. */
export const missingNdFix = (input: RecipeInput): Fix | null => {
  if (input.pins?.ndStops !== undefined) return null;
  for (let stops = 1; stops <= DENSEST_ND_STOPS; stops += 1) {
    const fix = stopsFix('nd', stops);
    if (judgeRecipe(applyFix(input, fix)).verdict === 'works') return fix;
  }
  return null;
};

/** Every pin by itself; its value is the stops that end with it. */
export const unpinFixes = (input: RecipeInput, problem: UnfixedProblem): readonly Fix[] => {
  const { pins, lights } = input;
  if (pins === undefined) return [];
  const value = problem.shortByStops;
  const fixes: Fix[] = [];
  if (pins.shutterS !== undefined) fixes.push(stopsFix('unpin-shutter', value));
  if (pins.fNumber !== undefined) fixes.push(stopsFix('unpin-aperture', value));
  if (pins.iso !== undefined) fixes.push(stopsFix('unpin-iso', value));
  if (pins.ndStops !== undefined) fixes.push(stopsFix('unpin-nd', value));
  pins.powerStops?.forEach((power, index) => {
    if (power === null) return;
    fixes.push({ ...stopsFix('unpin-power', value), role: lights[index]?.role, lights: [index] });
  });
  return fixes;
};
