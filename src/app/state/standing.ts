import { useEffect, useMemo, useState } from 'react';

import { inOrder } from '../../core/plan/order-key.ts';
import type { OutlineSet } from '../../core/plan/obstacle-schema.ts';
import type { Obstacle } from '../../core/skyline/obstacle.ts';
import { useShoot } from './documents.tsx';

/** Something on the ground of the open shoot: drawn, or one outline of an import. */
export type Standing = {
  readonly key: string;
  readonly name: string;
  readonly obstacle: Obstacle;
  /** Where it is kept: an obstacle of its own, or the number of an outline in a set. */
  readonly from:
    | { readonly kind: 'own'; readonly id: string }
    | { readonly kind: 'imported'; readonly setId: string; readonly index: number };
};

export const ownKey = (id: string): string => `own ${id}`;

type ReadSet = (id: string, set: OutlineSet) => readonly Standing[];

/** All that stands round the spots; outlines of imports follow once the code that reads them is there. */
export function useStanding(): readonly Standing[] {
  const { obstacles, outlineSets } = useShoot();
  const [readSet, setReadSet] = useState<ReadSet | null>(null);
  const needed = Object.keys(outlineSets).length > 0;
  useEffect(
    function fetchReader() {
      if (!needed || readSet !== null) return undefined;
      let current = true;
      void import('../../exchange/outlines/outlines-of-set.ts').then(({ outlinesOfSet }) => {
        if (current) setReadSet(() => setReader(outlinesOfSet));
      });
      return () => {
        current = false;
      };
    },
    [needed, readSet],
  );
  return useMemo(
    () => [
      ...inOrder(obstacles).map(([id, obstacle]): Standing => ({
        key: ownKey(id),
        name: obstacle.name,
        obstacle,
        from: { kind: 'own', id },
      })),
      ...inOrder(outlineSets).flatMap(([id, set]) => readSet?.(id, set) ?? []),
    ],
    [obstacles, outlineSets, readSet],
  );
}

type Kept = {
  readonly geoJson: string;
  readonly hidden: string;
  readonly standing: readonly Standing[];
};

/** Reads a set again only when its text has changed or something was taken out of it. */
function setReader(
  outlinesOfSet: (typeof import('../../exchange/outlines/outlines-of-set.ts'))['outlinesOfSet'],
): ReadSet {
  const kept = new Map<string, Kept>();
  return (setId, { name: setName, geoJson, hidden: taken }) => {
    const hidden = Object.keys(taken).join();
    const known = kept.get(setId);
    if (known?.geoJson === geoJson && known.hidden === hidden) return known.standing;
    const standing = outlinesOfSet(geoJson, taken).map(
      ({ index, name, ...obstacle }): Standing => ({
        key: `${setId} ${index}`,
        name: name === '' ? `${setName}, outline ${index + 1}` : name,
        obstacle,
        from: { kind: 'imported', setId, index },
      }),
    );
    kept.set(setId, { geoJson, hidden, standing });
    return standing;
  };
}
