import { orderChain, type Chain, type Insertion, type Sequence } from './order-chain.ts';
import { seededDraws } from './order-draws.ts';
import type { OrderPath, OrdersFound } from './order-path.ts';
import type { OrderTable } from './order-table.ts';

/** Steps of the innermost loops that one search may take, about half a second's worth. */
const WORK = 400_000_000;
const MOST_ROUNDS = 4000;
const FEWEST_ROUNDS = 80;
const WORK_A_STEP = 3_000_000;
/** Orders worse by about this share of all worth are followed at first, none in the end. */
const FIRST_HEAT = 0.02;
const SEED = 20_270_514;

type Standing = { readonly sequence: Sequence; readonly sum: number };

/**
 * A good order of more setups than can be proven: the best part of a sequence and its starts are
 * exact; the sequence is improved by taking some setups out and putting each back where it fits
 * best, worse ones followed less and less. [schrimpf2000] Counted in rounds, not by the clock, and
 * drawn from a fixed seed: the same day gives the same order. It is at least as good as
 * `wantedFirst`, a sequence of some of the setups.
 */
export function* searchedOrders(
  table: OrderTable,
  wantedFirst: Sequence = [],
): Generator<number, OrdersFound> {
  const chain = orderChain(table);
  const draw = seededDraws(SEED);
  const workARound = 4 * table.count ** 2 * table.slots;
  const rounds = Math.min(MOST_ROUNDS, Math.max(FEWEST_ROUNDS, Math.floor(WORK / workARound)));
  const roundsAStep = Math.ceil(WORK_A_STEP / workARound);
  let standing: Standing = { sequence: [], sum: -Infinity };
  for (const sequence of firstSequences(table, wantedFirst)) {
    chain.readForward(sequence, 0);
    const sum = chain.bestSum(sequence);
    if (sum > standing.sum) standing = { sequence, sum };
    yield 0;
  }
  let best = standing;
  for (let round = 0; round < rounds; round += 1) {
    const tried = rebuilt(chain, standing.sequence, draw);
    const heat = FIRST_HEAT * (1 - round / rounds) ** 2 * table.reach;
    if (tried.sum > standing.sum + heat * Math.log(Math.max(draw(), 1e-9))) standing = tried;
    if (tried.sum > best.sum + table.tieWidth) best = tried;
    if (round % Math.ceil(rounds / 8) === 0) standing = best;
    if (round % roundsAStep === 0) yield (0.9 * round) / rounds;
  }
  best = yield* polished(table, chain, best);
  return yield* foundIn(table, chain, best);
}

/** By the window that opens first, by the one that closes first, by the best start, and as given. */
function firstSequences(
  { count, slots, gain, from, to }: OrderTable,
  wantedFirst: Sequence,
): readonly Sequence[] {
  const bestSlots = Array.from({ length: count }, (_, setup) => {
    const gains = gain.subarray(setup * slots, (setup + 1) * slots);
    return gains.indexOf(gains.reduce((most, one) => Math.max(most, one), -Infinity));
  });
  const sorted = [Array.from(from), Array.from(to), bestSlots].map((keys) =>
    Array.from(keys.keys()).toSorted((one, other) => (keys[one] ?? 0) - (keys[other] ?? 0)),
  );
  const [byOpening = []] = sorted;
  return [...sorted, [...wantedFirst, ...byOpening.filter((one) => !wantedFirst.includes(one))]];
}

/** Some setups taken out, neighbours or here and there, and put back one by one. */
function rebuilt(chain: Chain, sequence: Sequence, draw: () => number): Standing {
  const length = sequence.length;
  const size = 2 + Math.floor(draw() * Math.min(8, length / 3));
  const first = Math.floor(draw() * (length - size + 1));
  const together = draw() < 0.5;
  const kept: number[] = [];
  const out: number[] = [];
  for (const [at, setup] of sequence.entries()) {
    const goes = together ? at >= first && at < first + size : draw() < size / length;
    (goes ? out : kept).push(setup);
  }
  for (let at = out.length - 1; at > 0; at -= 1) {
    const other = Math.floor(draw() * (at + 1));
    [out[at], out[other]] = [out[other] ?? 0, out[at] ?? 0];
  }
  chain.readForward(kept, 0);
  chain.readBackward(kept, kept.length - 1);
  for (const setup of out) putBack(chain, kept, setup);
  return { sequence: kept, sum: chain.bestSum(kept) };
}

function putBack(chain: Chain, sequence: number[], setup: number): Insertion {
  const insertion = chain.bestInsertion(sequence, setup);
  sequence.splice(insertion.at, 0, setup);
  chain.readForward(sequence, insertion.at);
  chain.readBackward(sequence, insertion.at);
  return insertion;
}

/** Setups moved one at a time to where they fit better, until none does. */
function* polished(
  { count, tieWidth }: OrderTable,
  chain: Chain,
  found: Standing,
): Generator<number, Standing> {
  let standing = found;
  for (let still = 0, setup = 0; still < count; setup = (setup + 1) % count) {
    const sequence = standing.sequence.filter((one) => one !== setup);
    chain.readForward(sequence, 0);
    chain.readBackward(sequence, sequence.length - 1);
    const { at, sum } = chain.bestInsertion(sequence, setup);
    still += 1;
    if (sum > standing.sum + tieWidth) {
      standing = { sequence: sequence.toSpliced(at, 0, setup), sum };
      still = 0;
    }
    yield 0.95;
  }
  return standing;
}

/** The order itself, that with the earliest end, and the best one round each setup left out. */
function* foundIn(
  table: OrderTable,
  chain: Chain,
  { sequence }: Standing,
): Generator<number, OrdersFound> {
  chain.readForward(sequence, 0);
  const path = chain.bestPath(sequence);
  const placed = new Set(path.map(({ setup }) => setup));
  const withEach: (OrderPath | null)[] = [];
  for (let setup = 0; setup < table.count; setup += 1) {
    yield 0.95 + (0.05 * setup) / table.count;
    if (placed.has(setup)) {
      withEach.push(null);
      continue;
    }
    const others = sequence.filter((one) => one !== setup);
    chain.readForward(others, 0);
    chain.readBackward(others, others.length - 1);
    const { at } = chain.bestInsertion(others, setup);
    withEach.push(pathThrough(table, others.toSpliced(at, 0, setup), setup));
  }
  return { path, withEach };
}

/** The best part of a sequence that holds a setup. */
function pathThrough(table: OrderTable, sequence: Sequence, setup: number): OrderPath {
  const { slots, gain, tieWidth } = table;
  const reach = sequence.reduce((sum, one) => {
    const gains = gain.subarray(one * slots, (one + 1) * slots);
    return (
      sum +
      gains.reduce(
        (most, each) => Math.max(most, Math.abs(each) < Infinity ? Math.abs(each) : 0),
        0,
      )
    );
  }, tieWidth);
  const raised = gain.slice();
  for (let slot = 0; slot < slots; slot += 1)
    raised[setup * slots + slot] = (raised[setup * slots + slot] ?? 0) + 2 * reach;
  const chain = orderChain({ ...table, gain: raised });
  chain.readForward(sequence, 0);
  return chain.bestPath(sequence);
}
