import { atanDeg } from '../units/angle.ts';

/** A source as the subject sees it. */
export type Softness = {
  /** Across its width, 0 to 180. */
  readonly angleDeg: number;
  readonly word: 'hard' | 'crisp' | 'soft' | 'very soft';
};

/** Angular size over which a word holds, common practice: the sun is 0.5°, an overcast sky 180°. [lightingPractice] */
const CRISP_FROM_DEG = 6;
const SOFT_FROM_DEG = 20;
const VERY_SOFT_FROM_DEG = 45;

/** How large a source of that width stands to the subject, and in a word. */
export function softness(source: {
  readonly widthM: number;
  readonly distanceM: number;
}): Softness {
  const angleDeg = 2 * atanDeg(source.widthM / (2 * source.distanceM));
  return { angleDeg, word: wordFor(angleDeg) };
}

function wordFor(angleDeg: number): Softness['word'] {
  if (angleDeg < CRISP_FROM_DEG) return 'hard';
  if (angleDeg < SOFT_FROM_DEG) return 'crisp';
  return angleDeg < VERY_SOFT_FROM_DEG ? 'soft' : 'very soft';
}
