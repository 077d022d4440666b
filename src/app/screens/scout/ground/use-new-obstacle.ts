import {
  DRAWN_CLASSES,
  newObstacle,
  type DrawnClassName,
} from '../../../../core/plan/new-obstacle.ts';
import { addObstacle } from '../../../../core/plan/obstacle-edits.ts';
import { orderKeyAtEnd } from '../../../../core/plan/order-key.ts';
import type { Corner } from '../../../../core/skyline/obstacle.ts';
import { civilDateOf } from '../../../../core/units/civil-time.ts';
import { useEditShoot, useShoot } from '../../../state/documents.tsx';
import { lookAtGround } from '../../../state/ground-view.ts';
import { useServices } from '../../../state/services.ts';
import { say } from '../../../state/view.ts';
import { metres } from '../../../ui/figure-text.ts';
import { freeName } from './obstacle-words.ts';

/** Puts what was drawn into the shoot, with an assumed height, and opens its fields. */
export function useNewObstacle(
  zone: string,
): (as: DrawnClassName, corners: readonly Corner[]) => void {
  const shoot = useShoot();
  const edit = useEditShoot();
  const { newId, nowMs } = useServices();
  return (as, corners) => {
    const taken = Object.values(shoot.obstacles).map((obstacle) => obstacle.name);
    const id = newId();
    const obstacle = newObstacle({
      order: orderKeyAtEnd(shoot.obstacles),
      name: freeName(DRAWN_CLASSES[as].name, taken),
      as,
      corners,
      dated: civilDateOf(nowMs(), zone),
    });
    edit(`draw ${obstacle.name}`, addObstacle(id, obstacle));
    lookAtGround({ tool: null, corners: [], obstacleId: id });
    say(`Drawn: ${obstacle.name}, its height taken as ${metres(obstacle.heightM)}`);
  };
}
