import { solveRecipe } from '../strobe/solve-recipe.ts';
import type { Recipe } from '../strobe/recipe.ts';
import { betterMinutes } from './better-minute.ts';
import { changedCase } from './changed-case.ts';
import { fixFamilies, type FixFamily } from './fix-families.ts';
import { recipeFixChanges } from './recipe-fix-changes.ts';
import { setupCase, type SetupCase, type SetupCaseInput } from './setup-case.ts';
import type { SetupChange, SetupFix } from './setup-fix.ts';

/**
 * What would make a setup work at a minute, each solved again on the changed document before it
 * is offered, lightest first: every single change that does, or, when none does, the two lightest
 * pairs. Empty when it works already or nothing can be asked.
 */
export function setupFixes(asked: SetupCaseInput): readonly SetupFix[] {
  const made = setupCase(asked);
  if (!made.ok || made.value.input === null) return [];
  const base = made.value;
  const families = familiesOf(asked, base);
  const singles = families.flatMap((family) => firstThatWorks(asked, base, family, []));
  if (singles.length > 0) return lightestFirst(singles);
  return withoutRepeats(lightestFirst(pairs(asked, base, families))).slice(0, 2);
}

/** The document's own families and what the recipe's figures offer, one family each. */
function familiesOf(asked: SetupCaseInput, base: SetupCase): readonly FixFamily[] {
  if (base.input === null) return [];
  const answer = solveRecipe(base.input);
  if (answer.ok) return [];
  const { problem } = answer;
  const ofFigures = problem.fixes
    .flatMap((fix) => (fix.kind === 'pair' ? (fix.parts ?? []) : [fix]))
    .map((fix) => recipeFixChanges(asked, base, fix));
  return [
    ...ofFigures,
    ...fixFamilies({ asked, base, problem }),
    ...betterMinutes(asked, base).map((change): FixFamily => [change]),
  ].filter((family) => family.length > 0);
}

function firstThatWorks(
  asked: SetupCaseInput,
  base: SetupCase,
  family: FixFamily,
  already: readonly SetupChange[],
): SetupFix[] {
  for (const change of family) {
    const changes = [...already, change];
    const changed = changedCase(asked, base, changes);
    if (changed?.answer.ok !== true) continue;
    return [fixOf(changes, changed.answer.value)];
  }
  return [];
}

function fixOf(changes: readonly SetupChange[], recipe: Recipe): SetupFix {
  const range = changes.reduce(
    (stops, change) => stops + (change.kind === 'polariser' ? change.upToStops : 0),
    0,
  );
  return {
    changes,
    inHandStops: recipe.inHandStops,
    leastInHandStops: recipe.inHandStops - range,
  };
}

/** Each family as far as it goes, with the least of every other that then is enough. */
function pairs(
  asked: SetupCaseInput,
  base: SetupCase,
  families: readonly FixFamily[],
): readonly SetupFix[] {
  const found: SetupFix[] = [];
  for (const family of families) {
    const first = family.at(-1);
    if (first === undefined || SUPPOSED_OR_MOVED.has(first.kind)) continue;
    const changed = changedCase(asked, base, [first]);
    if (changed === null || changed.answer.ok) continue;
    for (const second of familiesOf(changed.asked, changed.case)) {
      if (second[0]?.kind === first.kind || second[0]?.kind === 'clock') continue;
      found.push(...firstThatWorks(asked, base, second, [first]));
    }
  }
  return found;
}

/** The first of every pair that changes the same two things, in whichever order and by how much. */
function withoutRepeats(fixes: readonly SetupFix[]): readonly SetupFix[] {
  const seen = new Set<string>();
  return fixes.filter(({ changes }) => {
    const things = changes.map(changedThing).toSorted((one, other) => (one < other ? -1 : 1));
    const written = things.join();
    if (seen.has(written)) return false;
    seen.add(written);
    return true;
  });
}

/** What a change changes, its amount left out. */
function changedThing(change: SetupChange): string {
  const lights =
    'lightIds' in change ? change.lightIds : 'lightId' in change ? [change.lightId] : [];
  const which = 'part' in change ? change.part : 'pin' in change ? change.pin : '';
  return [change.kind, which, ...lights].join(' ');
}

/** Not worth being half of a pair: what is not owned, and what makes it another picture. */
const SUPPOSED_OR_MOVED: ReadonlySet<SetupChange['kind']> = new Set([
  'sync-shutter',
  'nd',
  'head-nd',
  'polariser',
  'bearing',
  'tilt',
  'focal-length',
  'clock',
]);

/** How much a change asks of the crew and the picture, common practice; smaller is tried first. [lightingPractice] */
const WEIGHT: Readonly<Record<SetupChange['kind'], number>> = {
  unpin: 0,
  distance: 1,
  height: 1,
  feather: 1,
  aim: 2,
  'part-off': 2,
  'part-on': 2,
  shade: 3,
  tripod: 3,
  clock: 4,
  modifier: 5,
  hold: 6,
  'unlit-under': 6,
  stand: 6,
  heads: 7,
  mirror: 7,
  lens: 8,
  camera: 8,
  bearing: 9,
  'focal-length': 10,
  tilt: 10,
  'head-nd': 8,
  'leave-out': 11,
  polariser: 12,
  nd: 13,
  'sync-shutter': 14,
};

const NOT_OWNED = 8;

const weightOf = ({ changes }: SetupFix): number =>
  changes.reduce(
    (sum, change) =>
      sum + WEIGHT[change.kind] + (change.kind === 'heads' && !change.owned ? NOT_OWNED : 0),
    0,
  );

const lightestFirst = (fixes: readonly SetupFix[]): readonly SetupFix[] =>
  fixes.toSorted((first, second) => weightOf(first) - weightOf(second));
