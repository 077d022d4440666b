import type { OrderQuestion, OrderSetup } from '../../src/core/plan/order-day.ts';

type Placed = { readonly setup: OrderSetup; readonly startMin: number };

const dayMinOf = ({ startMs, endMs }: OrderQuestion): number => (endMs - startMs) / 60_000;

/** Only drives by table, no breaks, no carrying. */
function moveMin({ travelMin }: OrderQuestion, before: OrderSetup, setup: OrderSetup): number {
  if (typeof travelMin === 'function') throw new Error('expected a table');
  const drive = travelMin[before.spotId]?.[setup.spotId] ?? Infinity;
  return before.shootMin + before.strikeMin + drive + setup.buildMin;
}

const worthOf = (placed: readonly Placed[]): number =>
  placed.reduce(
    (sum, { setup, startMin }) => sum + setup.weight * (setup.worth[startMin / 5] ?? 0),
    0,
  );

const opening = ({ worth }: OrderSetup): number => worth.findIndex((one) => one > -Infinity);

/** Each setup by the opening of its window, at the first start that is allowed and in reach. */
export function earliestWindowFirst(question: OrderQuestion): number {
  const placed: Placed[] = [];
  for (const setup of question.setups.toSorted((one, other) => opening(one) - opening(other))) {
    const last = placed.at(-1);
    const readyMin =
      last === undefined ? setup.buildMin : last.startMin + moveMin(question, last.setup, setup);
    const slot = setup.worth.findIndex((one, at) => one > -Infinity && 5 * at >= readyMin);
    if (slot < 0 || 5 * slot + setup.shootMin + setup.strikeMin > dayMinOf(question)) continue;
    placed.push({ setup, startMin: 5 * slot });
  }
  return worthOf(placed);
}

/** Setups in an order drawn by lot, each at its best start that keeps clear of those placed before. */
export function randomInsertion(question: OrderQuestion, draw: () => number): number {
  const drawn = question.setups
    .map((setup) => ({ setup, lot: draw() }))
    .toSorted((one, other) => one.lot - other.lot);
  const placed: Placed[] = [];
  for (const { setup } of drawn) {
    let best: { startMin: number; at: number; worth: number } | null = null;
    let at = 0;
    for (const [slot, worth] of setup.worth.entries()) {
      const startMin = 5 * slot;
      while ((placed[at]?.startMin ?? Infinity) < startMin) at += 1;
      if (worth <= (best?.worth ?? 0) || worth === -Infinity) continue;
      if (startMin < setup.buildMin) continue;
      if (startMin + setup.shootMin + setup.strikeMin > dayMinOf(question)) break;
      const [before, after] = [placed[at - 1], placed[at]];
      if (before && before.startMin + moveMin(question, before.setup, setup) > startMin) continue;
      if (after && startMin + moveMin(question, setup, after.setup) > after.startMin) continue;
      best = { startMin, at, worth };
    }
    if (best !== null) placed.splice(best.at, 0, { setup, startMin: best.startMin });
  }
  return worthOf(placed);
}
