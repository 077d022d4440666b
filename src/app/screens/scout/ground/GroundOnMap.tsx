import { useMemo, type ReactNode } from 'react';

import { DRAWN_CLASSES } from '../../../../core/plan/new-obstacle.ts';
import { editObstacle } from '../../../../core/plan/obstacle-edits.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import type { Corner } from '../../../../core/skyline/obstacle.ts';
import { sunPosition } from '../../../../core/sun-moon/sun-position.ts';
import { GroundLayers, type GroundLayersProps } from '../../../map/GroundLayers.tsx';
import { useEditShoot, useShoot } from '../../../state/documents.tsx';
import { endTool, lookAtGround, useGroundView } from '../../../state/ground-view.ts';
import { ownKey, useStanding } from '../../../state/standing.ts';
import { say } from '../../../state/view.ts';
import { groundOutlines } from './ground-outlines.ts';
import { shadowNote } from './shadow-note.ts';
import { useNewObstacle } from './use-new-obstacle.ts';
import { useTakeOver } from './use-take-over.ts';

export type GroundOnMapProps = {
  readonly map: GroundLayersProps['map'];
  readonly spot: Spot | null;
  readonly minuteMs: number;
  /** A spot is being added: clicks are not the ground's. */
  readonly adding: boolean;
};

/** The shoot's obstacles and their shadows on the map, and what is being drawn there. */
export function GroundOnMap({ map, spot, minuteMs, adding }: GroundOnMapProps): ReactNode {
  const shoot = useShoot();
  const edit = useEditShoot();
  const standing = useStanding();
  const { open, tool, corners, obstacleId } = useGroundView();
  const draw = useNewObstacle(spot?.zone ?? 'Etc/UTC');
  const takeOver = useTakeOver();
  const outlines = useMemo(() => groundOutlines(standing), [standing]);
  const obstacles = useMemo(() => standing.map(({ obstacle }) => obstacle), [standing]);
  const sun = useMemo(() => spot && sunPosition(minuteMs, spot), [spot, minuteMs]);
  const drawTool = adding || tool === 'take-over' ? null : tool;
  const held = obstacleId === null || !open || adding ? undefined : shoot.obstacles[obstacleId];

  const pick = (key: string | null): void => {
    const picked = standing.find((one) => one.key === key);
    if (picked?.from.kind === 'own')
      return lookAtGround({ obstacleId: picked.from.id, tool: null });
    if (tool === 'take-over')
      return picked === undefined ? say('No imported outline stands there') : takeOver(picked);
    lookAtGround({ obstacleId: null });
    if (picked !== undefined) say(`${picked.name}: imported. Take it over to change it`);
  };
  const reshape = (changed: readonly Corner[]): void => {
    if (obstacleId === null || held === undefined) return;
    const outline = changed.map(([longitudeDeg, latitude]): [number, number] => [
      longitudeDeg,
      latitude,
    ]);
    edit(`corners of ${held.name}`, editObstacle(obstacleId, { outline }));
  };
  return (
    <GroundLayers
      map={map}
      outlines={outlines}
      obstacles={obstacles}
      sun={sun}
      date={shoot.date}
      note={shadowNote(spot, sun, minuteMs)}
      listening={open && !adding}
      draws={drawTool === null ? null : DRAWN_CLASSES[drawTool].closed ? 'ring' : 'line'}
      corners={corners}
      held={
        held === undefined
          ? null
          : { key: ownKey(obstacleId ?? ''), closed: held.closed, corners: held.outline }
      }
      onDrawn={(outline) => drawTool !== null && draw(drawTool, outline.corners)}
      onReshaped={reshape}
      onCorner={({ longitudeDeg, latitudeDeg: northDeg }) =>
        lookAtGround({ corners: [...corners, [longitudeDeg, northDeg]] })
      }
      onPick={pick}
      onEscape={endTool}
      onDrawingFailed={() =>
        say('Drawing by pointer could not be loaded: reload the page, or set corners at the cross')
      }
    />
  );
}
