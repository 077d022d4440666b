/** Starts lie on a grid of this step, counted from the start of the day. */
export const START_STEP_MIN = 5;
export const MOST_SETUPS = 60;
export const LONGEST_DAY_H = 48;
export const MS_PER_MIN = 60_000;

/** A setup to be placed in the day. Its start is its first frame. */
export type OrderSetup = {
  readonly id: string;
  readonly spotId: string;
  /** From the kit lying at the spot to the first frame. */
  readonly buildMin: number;
  /** From the first frame to the last, more than 0. */
  readonly shootMin: number;
  /** From the last frame to the kit packed at the spot. */
  readonly strikeMin: number;
  /** 0 or more. */
  readonly weight: number;
  /** Of a first frame at each five minutes from the day's start; −Infinity: not allowed. */
  readonly worth: readonly number[];
  /** Placed before all that is not, whatever that costs. */
  readonly mustHave?: boolean;
  /** What is carried from the car to the spot and back; not given: one trip. */
  readonly kitKg?: number;
  /** Names of the pieces it shares with other setups. */
  readonly sharedKit?: readonly string[];
  /** Nobody works for so long after its last frame. */
  readonly breakAfterMin?: number;
};

/** Minutes of the drive by spot left and spot reached; what is not in it is not known. */
export type TravelTable = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** The same as a function, for where no worker is asked. */
export type TravelBetween = (fromSpotId: string, toSpotId: string) => number | null | undefined;

export type DayBreak = { readonly startMs: number; readonly endMs: number };

/**
 * A day to be ordered. The crew stands with its kit at the first spot's parking at the start, or
 * at `baseSpotId`; at the end the last setup is struck and back in the car.
 */
export type OrderQuestion = {
  readonly startMs: number;
  /** Latest wrap. */
  readonly endMs: number;
  readonly setups: readonly OrderSetup[];
  /** Within a spot 0 where nothing is given. */
  readonly travelMin: TravelTable | TravelBetween;
  /** From parking to each spot on foot, one way; not given: 0. */
  readonly walkInMin?: Readonly<Record<string, number>>;
  /** What the crew carries in one trip. */
  readonly crewCarryKg?: number;
  /** What it costs to take a shared piece over from the setup before, by its name. */
  readonly sharedKitMin?: Readonly<Record<string, number>>;
  /** Nobody shoots in a break; building, striking and driving rest meanwhile. */
  readonly breaks?: readonly DayBreak[];
  readonly baseSpotId?: string;
  /** Every duration but the breaks is taken longer by this share; not given: 0. */
  readonly slackShare?: number;
};

export type PlacedSetup = { readonly id: string; readonly startMs: number };

/** Minutes of the drive, or null where none is known. */
export function driveMin(
  { travelMin }: Pick<OrderQuestion, 'travelMin'>,
  from: string,
  to: string,
): number | null {
  const given = givenDrive(travelMin, from, to);
  if (given === undefined || given === null) return from === to ? 0 : null;
  return given >= 0 && given < Infinity ? given : null;
}

/** As given, right or wrong. */
export const givenDrive = (
  travelMin: OrderQuestion['travelMin'],
  from: string,
  to: string,
): number | null | undefined =>
  typeof travelMin === 'function' ? travelMin(from, to) : travelMin[from]?.[to];
