import { memo, type ReactNode } from 'react';

import { inOrder } from '../../../../core/plan/order-key.ts';
import type { ObstacleEntry } from '../../../../core/plan/obstacle-schema.ts';
import { lookAtGround, useGroundView } from '../../../state/ground-view.ts';
import { metres } from '../../../ui/figure-text.ts';
import { ObstacleFields } from './ObstacleFields.tsx';
import { KIND_WORDS } from './obstacle-words.ts';

type ObstacleListProps = { readonly obstacles: Readonly<Record<string, ObstacleEntry>> };

/** The obstacles of the shoot that can be edited, one of them open. */
export const ObstacleList = memo(function ObstacleList({
  obstacles,
}: ObstacleListProps): ReactNode {
  const chosenId = useGroundView(({ obstacleId }) => obstacleId);
  const all = inOrder(obstacles);
  if (all.length === 0)
    return (
      <p className="quiet" data-note="no-obstacles">
        Nothing is drawn yet: what stands round a spot hides its low sky and takes its sun.
      </p>
    );
  return (
    <ul className="obstacles">
      {all.map(([id, obstacle]) => (
        <li key={id} data-obstacle={id}>
          <button
            type="button"
            aria-expanded={id === chosenId}
            onClick={() =>
              lookAtGround({ obstacleId: id === chosenId ? null : id, tool: null, corners: [] })
            }
          >
            <span>{obstacle.name}</span>
            <span className="quiet" data-figure="obstacle-line">
              {obstacleLine(obstacle)}
            </span>
          </button>
          {id === chosenId ? <ObstacleFields id={id} obstacle={obstacle} /> : null}
        </li>
      ))}
    </ul>
  );
});

const obstacleLine = (obstacle: ObstacleEntry): string =>
  [
    KIND_WORDS[obstacle.kind],
    metres(obstacle.heightM),
    ...(obstacle.kind === 'trees'
      ? [`${percent(obstacle.passesInLeaf)} in leaf, ${percent(obstacle.passesBare)} bare`]
      : []),
    ...(obstacle.footElevationM === null ? [] : [`foot at ${obstacle.footElevationM} m`]),
  ].join(', ');

const percent = (share: number): string => `${Math.round(share * 100)} %`;
