/**
 * A row of numbers from 0 up to 1 that looks drawn by lot and is the same for the same seed:
 * a linear congruential generator. [numericalRecipes1992]
 */
export function seededDraws(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(1_664_525, state) + 1_013_904_223) >>> 0;
    return state / 4_294_967_296;
  };
}
