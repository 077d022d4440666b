import { isSolid } from '../../../../core/skyline/obstacle.ts';
import type { GroundOutline } from '../../../map/ground-shapes.ts';
import type { Standing } from '../../../state/standing.ts';

/** What stands on the ground as the map draws it. */
export const groundOutlines = (standing: readonly Standing[]): readonly GroundOutline[] =>
  standing.map(({ key, obstacle }) => ({
    key,
    kind: obstacle.kind,
    closed: obstacle.closed,
    solid: isSolid(obstacle),
    rings: [obstacle.outline, ...(obstacle.holes ?? [])],
  }));
