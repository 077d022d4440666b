export type Figure = {
  readonly figure: string;
  readonly value: number;
  readonly unit: string;
  readonly target: number;
  /** Whether the target is met: a most for some figures, a least for others. */
  readonly ok: boolean;
};

/** A file named *.bench.ts exports `benches`, a list of these. */
export type Bench = {
  readonly name: string;
  readonly run: () => Promise<readonly Figure[]>;
};
