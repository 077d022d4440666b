import { describe, expect, test } from 'vitest';

import { checkDocument } from '../../../src/core/plan/check-document.ts';
import {
  ASSUMED_ORIGIN,
  DRAWN_CLASSES,
  newObstacle,
  type DrawnClassName,
} from '../../../src/core/plan/new-obstacle.ts';
import { OBSTACLE } from '../../../src/core/plan/obstacle-schema.ts';
import type { Corner } from '../../../src/core/skyline/obstacle.ts';

const corners: readonly Corner[] = [
  [13.757, 45.65],
  [13.758, 45.65],
  [13.758, 45.651],
];

const drawn = (as: DrawnClassName) =>
  newObstacle({ order: 'n', name: 'Quay shed', as, corners, dated: '2027-05-10' });

describe('what has just been drawn', () => {
  test.each(Object.keys(DRAWN_CLASSES) as DrawnClassName[])(
    '%s: can be kept as it is, and says that its height is assumed',
    (as) => {
      const obstacle = drawn(as);
      expect(checkDocument(OBSTACLE, obstacle).ok).toBe(true);
      expect(obstacle.origin).toBe(ASSUMED_ORIGIN);
      expect(obstacle.outline).toEqual(corners);
      expect(obstacle.footElevationM).toBeNull();
    },
  );

  test('buildings and woods are rings, walls and rows lines', () => {
    expect(drawn('building').closed && drawn('tree-stand').closed).toBe(true);
    expect(drawn('wall').closed || drawn('tree-row').closed).toBe(false);
  });

  test('only trees let light through, more of it bare or as much', () => {
    expect([drawn('building').passesBare, drawn('wall').passesBare]).toEqual([0, 0]);
    const row = drawn('tree-row');
    expect(row.passesInLeaf).toBeGreaterThan(0);
    expect(row.passesBare).toBeGreaterThanOrEqual(row.passesInLeaf);
  });
});
