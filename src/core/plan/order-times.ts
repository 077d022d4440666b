import { MS_PER_MIN, START_STEP_MIN, type OrderQuestion, type PlacedSetup } from './order-day.ts';
import { cutMinutes, type CutMinute } from './order-cuts.ts';
import { dayMoves } from './order-moves.ts';

/** The minutes of a placed setup, counted backward from its first frame and on from it. */
export type SetupTimes = {
  readonly id: string;
  /** Kit out of the car: the trips in begin. */
  readonly arriveMs: number;
  /** The kit lies at the spot: stands go up. */
  readonly standsUpMs: number;
  /** Frame with the heads off, for the sky. */
  readonly headsOffMs: number;
  readonly firstFrameMs: number;
  readonly lastFrameMs: number;
  readonly struckMs: number;
  /** Everything back in the car. */
  readonly leaveMs: number;
  /** When the crew has to drive off at the latest for the next first frame; null after the last. */
  readonly leaveByMs: number | null;
  /** Null where the setups cannot be done in this sequence, or this one not at this time of it. */
  readonly cut: CutMinute | null;
};

/** Common practice: late enough for the sky to be the picture's, early enough to turn a dial. */
export const HEADS_OFF_BEFORE_MIN = 5;

/**
 * The times of an order, own or proposed, setups by their first frames. Setups that are not in the
 * question are passed over.
 */
export function setupTimes(
  question: OrderQuestion,
  placed: readonly PlacedSetup[],
  headsOffBeforeMin: number = HEADS_OFF_BEFORE_MIN,
): readonly SetupTimes[] {
  const moves = dayMoves(question);
  const setupOf = new Map(question.setups.map((setup) => [setup.id, setup]));
  const inDay = placed
    .flatMap((one) => {
      const setup = setupOf.get(one.id);
      return setup === undefined
        ? []
        : [{ setup, startMin: (one.startMs - question.startMs) / MS_PER_MIN }];
    })
    .toSorted((one, other) => one.startMin - other.startMin);
  const cuts = cutMinutes(
    question,
    inDay.map(({ setup, startMin }) => ({
      id: setup.id,
      slot: Math.floor(startMin / START_STEP_MIN + 1e-9),
    })),
  );
  const atMs = (minutes: number): number => question.startMs + Math.round(MS_PER_MIN * minutes);
  return inDay.map(({ setup, startMin }, at) => {
    const buildMin = moves.buildMin(setup);
    const before = inDay[at - 1]?.setup;
    const carryMin = before?.spotId === setup.spotId ? 0 : moves.carryMin(setup);
    const lastFrameMin = startMin + moves.shootMin(setup);
    const after = inDay[at + 1];
    const carryOutMin = after?.setup.spotId === setup.spotId ? 0 : moves.carryMin(setup);
    const strikeMin = moves.strikeMin(setup);
    const driveMin = after && moves.driveMin(setup.spotId, after.setup.spotId);
    const carryInMin = after === undefined || carryOutMin === 0 ? 0 : moves.carryMin(after.setup);
    return {
      id: setup.id,
      arriveMs: atMs(moves.begunMin(startMin, buildMin + carryMin)),
      standsUpMs: atMs(moves.begunMin(startMin, buildMin)),
      headsOffMs: atMs(moves.begunMin(startMin, Math.min(buildMin, headsOffBeforeMin))),
      firstFrameMs: atMs(startMin),
      lastFrameMs: atMs(lastFrameMin),
      struckMs: atMs(moves.workedMin(lastFrameMin, strikeMin)),
      leaveMs: atMs(moves.workedMin(lastFrameMin, strikeMin + carryOutMin)),
      leaveByMs:
        after === undefined || driveMin === undefined || driveMin === null
          ? null
          : atMs(
              moves.begunMin(after.startMin, moves.buildMin(after.setup) + carryInMin + driveMin),
            ),
      cut: cuts.get(setup.id) ?? null,
    };
  });
}
