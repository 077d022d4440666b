import { outlinesOfSet } from '../../exchange/outlines/outlines-of-set.ts';
import { groundedSpot } from '../../core/plan/grounded-spot.ts';
import { inOrder } from '../../core/plan/order-key.ts';
import type { OutlineSet } from '../../core/plan/obstacle-schema.ts';
import type { Shoot, Spot } from '../../core/plan/shoot.ts';
import type { Obstacle } from '../../core/skyline/obstacle.ts';

type Kept<Value> = { readonly asked: string; readonly value: Value };

/** Works skylines out, and again only where what they come from has changed. */
export function shootGrounder(): (shoot: Shoot) => Shoot {
  const sets = new Map<string, Kept<readonly Obstacle[]>>();
  const spots = new Map<string, Kept<Spot['skylineNow']>>();

  const ofSet = (id: string, { geoJson, hidden }: OutlineSet): readonly Obstacle[] => {
    const asked = `${Object.keys(hidden).join()} ${geoJson}`;
    return kept(sets, id, asked, () => outlinesOfSet(geoJson, hidden));
  };

  return (shoot) => {
    const drawn = inOrder(shoot.obstacles).map(([, obstacle]) => obstacle);
    const imported = inOrder(shoot.outlineSets).flatMap(([id, set]) => ofSet(id, set));
    const obstacles = [...drawn, ...imported];
    const ground = JSON.stringify([
      shoot.date,
      drawn,
      inOrder(shoot.outlineSets).map(([id, { hidden, dated }]) => [id, hidden, dated]),
    ]);
    return {
      ...shoot,
      spots: Object.fromEntries(
        Object.entries(shoot.spots).map(([id, spot]) => {
          const { latitudeDeg, longitudeDeg, elevationM, framing, skyline, terrain } = spot;
          const asked = `${ground} ${JSON.stringify([latitudeDeg, longitudeDeg, elevationM, framing.cameraHeightM, skyline, terrain])}`;
          const skylineNow = kept(
            spots,
            id,
            asked,
            () => groundedSpot(spot, obstacles, shoot.date).skylineNow,
          );
          return [id, skylineNow === undefined ? spot : { ...spot, skylineNow }];
        }),
      ),
    };
  };
}

function kept<Value>(
  known: Map<string, Kept<Value>>,
  id: string,
  asked: string,
  work: () => Value,
): Value {
  const found = known.get(id);
  if (found?.asked === asked) return found.value;
  const value = work();
  known.set(id, { asked, value });
  return value;
}
