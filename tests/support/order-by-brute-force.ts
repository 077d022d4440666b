import type { OrderQuestion, OrderSetup } from '../../src/core/plan/order-day.ts';

export type BruteOrder = { readonly worth: number; readonly endMin: number };

/**
 * Every sequence of every choice of setups, every start on the grid of each: the most worth, and
 * the earliest end that goes with it. Only the plain question: drives by table, no breaks, no
 * carrying. `counts` says which choices are looked at.
 */
export function orderByBruteForce(
  { startMs, endMs, setups, travelMin }: OrderQuestion,
  counts: (chosen: readonly OrderSetup[]) => boolean = () => true,
): BruteOrder {
  if (typeof travelMin === 'function') throw new Error('expected a table');
  const dayMin = (endMs - startMs) / 60_000;
  const starts = Array.from({ length: Math.floor(dayMin / 5) + 1 }, (_, at) => 5 * at);
  let best: BruteOrder = counts([]) ? { worth: 0, endMin: 0 } : { worth: -Infinity, endMin: 0 };

  /** By start of the last of the chosen: the most worth up to it. */
  const goOn = (chosen: readonly OrderSetup[], worths: readonly number[]): void => {
    const last = chosen.at(-1);
    if (last !== undefined && counts(chosen))
      for (const [at, worth] of worths.entries()) {
        const endMin = (starts[at] ?? 0) + last.shootMin + last.strikeMin;
        if (worth === -Infinity || endMin > dayMin) continue;
        const ahead = worth - best.worth;
        if (ahead > 1e-9 || (ahead > -1e-9 && endMin < best.endMin)) best = { worth, endMin };
      }
    for (const setup of setups) {
      if (chosen.includes(setup)) continue;
      const driveMin = last === undefined ? 0 : travelMin[last.spotId]?.[setup.spotId];
      const knownMin = driveMin ?? (last?.spotId === setup.spotId ? 0 : Infinity);
      const onward = starts.map((startMin, at) => {
        const here = setup.worth[at] ?? -Infinity;
        let before = last === undefined && startMin >= setup.buildMin ? 0 : -Infinity;
        if (last !== undefined)
          for (const [earlier, worth] of worths.entries()) {
            const readyMin =
              (starts[earlier] ?? 0) + last.shootMin + last.strikeMin + knownMin + setup.buildMin;
            if (readyMin <= startMin) before = Math.max(before, worth);
          }
        return before === -Infinity || here === -Infinity
          ? -Infinity
          : before + setup.weight * here;
      });
      if (onward.some((worth) => worth > -Infinity)) goOn([...chosen, setup], onward);
    }
  };
  goOn([], []);
  return best;
}
