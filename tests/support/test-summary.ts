import { addCounts, type Counts } from './test-counts.ts';

export type Part = {
  readonly name: string;
  readonly counts: Counts;
  readonly seconds: number;
};

const sentence = ({ passed, failed, skipped }: Counts): string =>
  `${passed} passed, ${failed} failed, ${skipped} skipped`;

/** One line per part, then the sum alone on the last line. */
export const summaryLines = (parts: readonly Part[]): readonly string[] => [
  ...parts.map(
    ({ name, counts, seconds }) =>
      `${name.padEnd(10)}${sentence(counts)}  (${seconds.toFixed(1)} s)`,
  ),
  sentence(addCounts(parts.map((part) => part.counts))),
];

/** Without a browser an own machine may go on; a CI machine must have one. */
export const exitCodeFor = (run: {
  readonly parts: readonly Part[];
  readonly browserMissing: boolean;
  readonly ci: boolean;
}): 0 | 1 =>
  addCounts(run.parts.map((part) => part.counts)).failed > 0 || (run.browserMissing && run.ci)
    ? 1
    : 0;

/** CI=true and CI=1 are CI; unset, empty, CI=false and CI=0 are not. */
export const isCi = (setting: string | undefined): boolean =>
  setting !== undefined && !['', 'false', '0'].includes(setting.toLowerCase());
