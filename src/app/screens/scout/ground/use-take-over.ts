import { takeOverOutline } from '../../../../core/plan/obstacle-edits.ts';
import { orderKeyAtEnd } from '../../../../core/plan/order-key.ts';
import { useEditShoot, useShoot } from '../../../state/documents.tsx';
import { lookAtGround } from '../../../state/ground-view.ts';
import { useServices } from '../../../state/services.ts';
import type { Standing } from '../../../state/standing.ts';
import { say } from '../../../state/view.ts';
import { freeName } from './obstacle-words.ts';

/** Makes an imported outline an obstacle of its own, in one step, and opens its fields. */
export function useTakeOver(): (standing: Standing) => void {
  const shoot = useShoot();
  const edit = useEditShoot();
  const { newId } = useServices();
  return ({ name, obstacle, from }) => {
    const set = from.kind === 'imported' ? shoot.outlineSets[from.setId] : undefined;
    if (from.kind !== 'imported' || set === undefined) return;
    const taken = Object.values(shoot.obstacles).map((one) => one.name);
    const obstacleId = newId();
    const { holes = [], outline, ...facts } = obstacle;
    edit(
      `take over ${name}`,
      takeOverOutline({
        setId: from.setId,
        index: from.index,
        obstacleId,
        obstacle: {
          ...facts,
          order: orderKeyAtEnd(shoot.obstacles),
          name: freeName(name, taken),
          outline: outline.map(([longitudeDeg, latitudeDeg]) => [longitudeDeg, latitudeDeg]),
          origin: `${set.name}, taken over for editing`,
          dated: set.dated,
        },
      }),
    );
    lookAtGround({ tool: null, obstacleId });
    say(
      holes.length === 0
        ? `Taken over: ${name}`
        : `Taken over: ${name}. Its courtyards are filled: an outline that is edited has none`,
    );
  };
}
