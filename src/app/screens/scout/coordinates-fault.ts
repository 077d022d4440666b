import { parseCoordinates } from '../../../core/place/coordinates-text.ts';

/** What is wrong with pasted coordinates, as a sentence; null when they can be read. */
export function coordinatesFault(text: string): string | null {
  const read = parseCoordinates(text);
  return read.ok ? null : `found ${read.problem.found}; expected ${read.problem.expected}`;
}
