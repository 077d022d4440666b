import { driveMin, MS_PER_MIN, type OrderQuestion, type OrderSetup } from './order-day.ts';

type Rest = { readonly fromMin: number; readonly toMin: number };

/** How long everything of a day takes, slack included; instants in minutes from its start. */
export type DayMoves = {
  readonly dayMin: number;
  readonly shootMin: (setup: OrderSetup) => number;
  /** From the spot's parking to the kit lying at the spot, all trips. */
  readonly carryMin: (setup: OrderSetup) => number;
  readonly buildMin: (setup: OrderSetup) => number;
  readonly strikeMin: (setup: OrderSetup) => number;
  readonly driveMin: (fromSpotId: string, toSpotId: string) => number | null;
  /** From the last frame of one to the first of the next, breaks not counted; null: no drive known. */
  readonly moveMin: (before: OrderSetup, setup: OrderSetup) => number | null;
  /** The earliest first frame of a day that begins with the setup; null: no drive known. */
  readonly earliestMin: (setup: OrderSetup) => number | null;
  /** When work begun at an instant is done, breaks passed over. */
  readonly workedMin: (fromMin: number, workMin: number) => number;
  /** The latest instant from which work is done by another, breaks passed over. */
  readonly begunMin: (untilMin: number, workMin: number) => number;
  /** How many minutes of shooting from an instant fall into a break. */
  readonly inBreakMin: (setup: OrderSetup, startMin: number) => number;
  /** When the setup is struck and back in the car. */
  readonly leaveMin: (setup: OrderSetup, startMin: number) => number;
};

export function dayMoves(question: OrderQuestion): DayMoves {
  const { startMs, endMs, walkInMin = {}, crewCarryKg, sharedKitMin = {}, baseSpotId } = question;
  const pace = 1 + (question.slackShare ?? 0);
  const rests = joined(
    (question.breaks ?? []).map((rest) => ({
      fromMin: (rest.startMs - startMs) / MS_PER_MIN,
      toMin: (rest.endMs - startMs) / MS_PER_MIN,
    })),
  );
  const mirroredRests = rests.map(mirrored).toReversed();

  const carryMin = ({ spotId, kitKg = 0 }: OrderSetup): number => {
    const trips = crewCarryKg === undefined ? 1 : Math.max(1, Math.ceil(kitKg / crewCarryKg));
    return pace * (walkInMin[spotId] ?? 0) * (2 * trips - 1);
  };
  const paced =
    (field: 'buildMin' | 'shootMin' | 'strikeMin') =>
    (setup: OrderSetup): number =>
      pace * setup[field];
  const [buildMin, shootMin, strikeMin] = [
    paced('buildMin'),
    paced('shootMin'),
    paced('strikeMin'),
  ];
  const drive = (from: string, to: string): number | null => {
    const minutes = driveMin(question, from, to);
    return minutes === null ? null : pace * minutes;
  };
  const moveMin = (before: OrderSetup, setup: OrderSetup): number | null => {
    const driven = drive(before.spotId, setup.spotId);
    if (driven === null) return null;
    const carried = before.spotId === setup.spotId ? 0 : carryMin(before) + carryMin(setup);
    return (
      strikeMin(before) +
      carried +
      driven +
      pace * takenOverMin(before, setup, sharedKitMin) +
      buildMin(setup) +
      (before.breakAfterMin ?? 0)
    );
  };
  const workedMin = (fromMin: number, workMin: number): number => worked(rests, fromMin, workMin);
  return {
    dayMin: (endMs - startMs) / MS_PER_MIN,
    shootMin,
    carryMin,
    buildMin,
    strikeMin,
    driveMin: drive,
    moveMin,
    workedMin,
    begunMin: (untilMin, workMin) => -worked(mirroredRests, -untilMin, workMin),
    earliestMin: (setup) => {
      const driven = baseSpotId === undefined ? 0 : drive(baseSpotId, setup.spotId);
      return driven === null ? null : workedMin(0, driven + carryMin(setup) + buildMin(setup));
    },
    inBreakMin: (setup, startMin) =>
      rests.reduce(
        (sum, { fromMin, toMin }) =>
          sum +
          Math.max(0, Math.min(toMin, startMin + shootMin(setup)) - Math.max(fromMin, startMin)),
        0,
      ),
    leaveMin: (setup, startMin) =>
      workedMin(startMin + shootMin(setup), strikeMin(setup) + carryMin(setup)),
  };
}

/** Breaks in the order of the day, those that meet as one. */
function joined(rests: readonly Rest[]): readonly Rest[] {
  const apart: Rest[] = [];
  for (const rest of rests.toSorted((one, other) => one.fromMin - other.fromMin)) {
    const last = apart.at(-1);
    if (last === undefined || rest.fromMin > last.toMin) apart.push(rest);
    else
      apart[apart.length - 1] = {
        fromMin: last.fromMin,
        toMin: Math.max(last.toMin, rest.toMin),
      };
  }
  return apart;
}

const mirrored = ({ fromMin, toMin }: Rest): Rest => ({ fromMin: -toMin, toMin: -fromMin });

function takenOverMin(
  before: OrderSetup,
  setup: OrderSetup,
  sharedKitMin: Readonly<Record<string, number>>,
): number {
  const had = new Set(before.sharedKit);
  return [...new Set(setup.sharedKit)]
    .filter((piece) => had.has(piece))
    .reduce((sum, piece) => sum + (sharedKitMin[piece] ?? 0), 0);
}

function worked(rests: readonly Rest[], fromMin: number, workMin: number): number {
  let atMin = fromMin;
  let leftMin = workMin;
  for (const rest of rests) {
    if (rest.toMin <= atMin) continue;
    if (atMin + leftMin <= rest.fromMin) break;
    leftMin -= Math.max(0, rest.fromMin - atMin);
    atMin = rest.toMin;
  }
  return atMin + leftMin;
}
