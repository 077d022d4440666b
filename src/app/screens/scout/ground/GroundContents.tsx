import './ground-contents.css';
import type { ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { civilDateOf } from '../../../../core/units/civil-time.ts';
import { useShoot } from '../../../state/documents.tsx';
import { lookAtGround } from '../../../state/ground-view.ts';
import { useServices } from '../../../state/services.ts';
import { useStanding } from '../../../state/standing.ts';
import { DrawTools } from './DrawTools.tsx';
import { FetchOutlines } from './FetchOutlines.tsx';
import { ImportOutlines } from './ImportOutlines.tsx';
import { ObstacleList } from './ObstacleList.tsx';
import { OutlineSets } from './OutlineSets.tsx';
import { ShadowUnion } from './ShadowUnion.tsx';
import { SpotInShadow } from './SpotInShadow.tsx';
import { useNewObstacle } from './use-new-obstacle.ts';

export type GroundContentsProps = {
  /** The spot that is looked at; shadows are those of its minute. */
  readonly spot: Spot | null;
  readonly minuteMs: number;
};

/** What stands round the spots: drawn, taken in, and the shadows of all of it. */
export function GroundContents({ spot, minuteMs }: GroundContentsProps): ReactNode {
  const shoot = useShoot();
  const standing = useStanding();
  const { nowMs } = useServices();
  const zone = spot?.zone ?? 'Etc/UTC';
  const finish = useNewObstacle(zone);
  const dated = civilDateOf(nowMs(), zone);
  return (
    <section className="ground-contents" aria-labelledby="ground-heading" data-ground>
      <header>
        <h2 id="ground-heading">What stands on the ground</h2>
        <button
          type="button"
          data-close-ground
          onClick={() => lookAtGround({ open: false, tool: null, corners: [], obstacleId: null })}
        >
          Close
        </button>
      </header>
      {spot === null ? null : (
        <SpotInShadow spot={spot} minuteMs={minuteMs} standing={standing} date={shoot.date} />
      )}
      <DrawTools onFinish={finish} />
      <ObstacleList obstacles={shoot.obstacles} />
      <OutlineSets sets={shoot.outlineSets} />
      <ImportOutlines dated={dated} />
      {spot === null ? null : <FetchOutlines spot={spot} dated={dated} />}
      {spot === null || standing.length === 0 ? null : (
        <ShadowUnion spot={spot} minuteMs={minuteMs} standing={standing} date={shoot.date} />
      )}
    </section>
  );
}
