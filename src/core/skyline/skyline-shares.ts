import { COMBINED_STEP_DEG, highestSource, type SkylineSource } from './combined-skyline.ts';

/** Who makes the skyline from an azimuth on: a number in the list of sources, −1 where none knows anything. */
export type MadeBy = { readonly fromDeg: number; readonly toDeg: number; readonly index: number };

/** The stretches of the round and the source that is highest in each, from 0 to 360. */
export function skylineMakers(sources: readonly SkylineSource[]): readonly MadeBy[] {
  const stretches: MadeBy[] = [];
  for (let step = 0; step < 360 / COMBINED_STEP_DEG; step += 1) {
    const fromDeg = step * COMBINED_STEP_DEG;
    const toDeg = fromDeg + COMBINED_STEP_DEG;
    const { index } = highestSource(sources, fromDeg);
    const last = stretches.at(-1);
    if (last?.index === index) stretches[stretches.length - 1] = { ...last, toDeg };
    else stretches.push({ fromDeg, toDeg, index });
  }
  return stretches;
}

/** How much of the round each source decides, 0 to 1, in the order of the sources. */
export const skylineShares = (sources: readonly SkylineSource[]): readonly number[] => {
  const makers = skylineMakers(sources);
  return sources.map((_, index) =>
    makers.reduce(
      (share, made) => (made.index === index ? share + (made.toDeg - made.fromDeg) / 360 : share),
      0,
    ),
  );
};
