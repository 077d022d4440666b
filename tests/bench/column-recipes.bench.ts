import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { setupColumn } from '../../src/core/plan/setup-column.ts';
import { setupLight, setupScene, type SetupScene } from '../../src/core/plan/setup-light.ts';
import { setupQuestion } from '../../src/core/plan/setup-lights.ts';
import { recipeInput, type SetupQuestion } from '../../src/core/plan/setup-question.ts';
import { attemptRecipe } from '../../src/core/strobe/attempt-recipe.ts';
import { dayBoundsMs, dayOfYear } from '../../src/core/units/civil-time.ts';
import { seededRandom, seededScene } from '../support/seeded-framings.ts';
import type { Bench, Figure } from './bench.ts';

const WARM_UP = 15;
const RUNS = 20;
const STEPS = 144;
const TARGET_MS = 15;

/** The demo's quartet with key and fill, over a ragged skyline of 36 points. */
function quartet(): { scene: SetupScene; question: SetupQuestion; date: string } {
  const shoot = demoShoot();
  const setup = shoot.setups['quartet'];
  const spot = setup && shoot.spots[setup.spotId];
  if (setup === undefined || spot === undefined) throw new Error('the demo has no quartet');
  const question = setupQuestion(setup, spot, demoKit());
  if (!question.ok) throw new Error('the demo kit lacks what the quartet needs');
  const { skyline } = seededScene(seededRandom(7));
  const scene = { ...setupScene(shoot, setup, spot), skyline };
  return { scene, question: question.value, date: shoot.date };
}

/** Light, reach and the whole recipe at every step of a day. */
function columnWithRecipes({ scene, question, date }: ReturnType<typeof quartet>): number {
  const light = setupLight(scene);
  const { startMs } = dayBoundsMs(date, scene.zone);
  const day = dayOfYear(date);
  let solved = 0;
  for (let step = 0; step < STEPS; step += 1) {
    const input = recipeInput(
      question,
      light({ instantMs: startMs + step * 600_000, dayOfYear: day }),
    );
    if (input !== null && attemptRecipe(input).ok) solved += 1;
  }
  return solved;
}

const medianMs = (work: () => unknown): number => {
  for (let run = 0; run < WARM_UP; run += 1) work();
  const times = Array.from({ length: RUNS }, () => {
    const startMs = performance.now();
    work();
    return performance.now() - startMs;
  });
  return times.toSorted((one, other) => one - other)[RUNS / 2] ?? NaN;
};

const row = (figure: string, value: number): Figure => ({
  figure,
  value,
  unit: 'ms',
  target: TARGET_MS,
  ok: value <= TARGET_MS,
});

export const benches: readonly Bench[] = [
  {
    name: 'One column with its lights',
    run: async () => {
      const asked = quartet();
      const { scene, question, date } = asked;
      if (columnWithRecipes(asked) === 0) throw new Error('no minute of the day has a recipe');
      return [
        row(
          `light, reach and verdict, ${STEPS} steps`,
          medianMs(() => setupColumn({ scene, question, date, stepMin: 10 })),
        ),
        row(
          `light and the whole recipe, ${STEPS} steps`,
          medianMs(() => columnWithRecipes(asked)),
        ),
      ];
    },
  },
];
