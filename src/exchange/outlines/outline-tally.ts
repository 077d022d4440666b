import {
  CROWN_DIAMETER_M,
  FLOOR_M,
  OUTLINE_CLASSES,
  type OutlineClassName,
} from './outline-classes.data.ts';
import { TALLEST_M, type TaggedOutline } from './outline-tags.ts';

export type Skipped = { readonly count: number; readonly why: string };

type ClassCount = { all: number; assumed: number };

/** Counts of what was assumed, changed and left out while outlines are read. */
export type OutlineTally = {
  readonly skipped: Map<string, number>;
  readonly classes: Map<OutlineClassName, ClassCount>;
  byFloors: number;
  notBelieved: number;
  notBelievedText: string;
  assumedCrowns: number;
  crossing: number;
  thinned: number;
  cut: number;
  lostHoles: number;
};

export const newTally = (): OutlineTally => ({
  skipped: new Map(),
  classes: new Map(),
  byFloors: 0,
  notBelieved: 0,
  notBelievedText: '',
  assumedCrowns: 0,
  crossing: 0,
  thinned: 0,
  cut: 0,
  lostHoles: 0,
});

export function countSkipped(tally: OutlineTally, why: string): void {
  tally.skipped.set(why, (tally.skipped.get(why) ?? 0) + 1);
}

export function countHeight(
  tally: OutlineTally,
  {
    className,
    heightFrom,
    heightText,
  }: Pick<TaggedOutline, 'className' | 'heightFrom' | 'heightText'>,
): void {
  const counts = tally.classes.get(className) ?? { all: 0, assumed: 0 };
  counts.all += 1;
  if (heightFrom === 'assumed') counts.assumed += 1;
  tally.classes.set(className, counts);
  if (heightFrom === 'floors') tally.byFloors += 1;
  if (heightFrom === 'not-believed') {
    tally.notBelieved += 1;
    tally.notBelievedText ||= heightText;
  }
}

export const skippedOf = (tally: OutlineTally): readonly Skipped[] =>
  [...tally.skipped]
    .map(([why, count]) => ({ count, why }))
    .toSorted((first, second) => second.count - first.count);

/** What was assumed and changed, a sentence each. */
export function notesOf(tally: OutlineTally): readonly string[] {
  const notes: string[] = [];
  for (const [className, { all, assumed }] of tally.classes) {
    const { many, heightM, crownBaseM } = OUTLINE_CLASSES[className];
    if (assumed > 0)
      notes.push(`${assumed} of ${all} ${many} had no height: taken as ${heightM} m.`);
    if (crownBaseM > 0)
      notes.push(
        `Crowns of ${many} are taken to begin ${crownBaseM} m above the ground where nothing else is said.`,
      );
  }
  const told: readonly (readonly [count: number, sentence: string])[] = [
    [tally.byFloors, `heights come from floors, ${FLOOR_M} m each.`],
    [
      tally.notBelieved,
      `heights cannot be (such as “${tally.notBelievedText}”; expected 0.1 to ${TALLEST_M} m): taken as if none was given.`,
    ],
    [tally.assumedCrowns, `single trees had no width: crowns taken as ${CROWN_DIAMETER_M} m wide.`],
    [tally.crossing, 'outlines cross themselves: kept, each of their loops counts.'],
    [tally.thinned, 'outlines had more than 2,000 corners: corners close together were left out.'],
    [tally.cut, 'outlines cross the antimeridian: cut in two there.'],
    [tally.lostHoles, 'courtyards could not be kept: they count as filled.'],
  ];
  return [
    ...notes,
    ...told.flatMap(([count, sentence]) => (count > 0 ? [`${count} ${sentence}`] : [])),
  ];
}
