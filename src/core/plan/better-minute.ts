import { attemptRecipe } from '../strobe/attempt-recipe.ts';
import { clockTime, dayBoundsMs, dayOfYear } from '../units/civil-time.ts';
import type { SetupCase, SetupCaseInput } from './setup-case.ts';
import type { SetupChange } from './setup-fix.ts';
import { setupLight } from './setup-light.ts';
import { recipeInput } from './setup-question.ts';

const MS_PER_MIN = 60_000;
const COARSE_MIN = 5;

/**
 * The nearest clock times, later and earlier on the same date, at which a setup works as it is:
 * to the minute, where the light changes one way within five of them.
 */
export function betterMinutes(
  { shoot, instantMs }: SetupCaseInput,
  base: SetupCase,
): readonly SetupChange[] {
  if (base.setup.clockPinned) return [];
  const { startMs, endMs } = dayBoundsMs(shoot.date, base.spot.zone);
  const light = setupLight(base.scene);
  const day = dayOfYear(shoot.date);
  const works = (atMs: number): boolean => {
    const input = recipeInput(base.question, light({ instantMs: atMs, dayOfYear: day }));
    return input !== null && attemptRecipe(input).ok;
  };
  const found: SetupChange[] = [];
  for (const way of [1, -1]) {
    const atMs = firstThatWorks(works, instantMs, way, (ms) => ms >= startMs && ms < endMs);
    if (atMs !== null)
      found.push({ kind: 'clock', clock: clockTime(atMs, base.spot.zone), later: way === 1 });
  }
  return found;
}

function firstThatWorks(
  works: (atMs: number) => boolean,
  fromMs: number,
  way: number,
  inside: (atMs: number) => boolean,
): number | null {
  const wholeMin = Math.floor(fromMs / MS_PER_MIN) * MS_PER_MIN;
  const step = way * COARSE_MIN * MS_PER_MIN;
  for (let atMs = wholeMin + step; inside(atMs); atMs += step) {
    if (!works(atMs)) continue;
    let first = atMs;
    for (let back = 1; back < COARSE_MIN; back += 1) {
      const earlier = atMs - way * back * MS_PER_MIN;
      if (works(earlier)) first = earlier;
    }
    return first;
  }
  return null;
}
