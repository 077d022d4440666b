import { create } from 'zustand';

import type { DrawnClassName } from '../../core/plan/new-obstacle.ts';
import type { Corner } from '../../core/skyline/obstacle.ts';

/** What this tab does with the ground; nothing of it is part of the shoot. */
type GroundView = {
  readonly open: boolean;
  readonly tool: DrawnClassName | 'take-over' | null;
  /** Corners set at the cross or typed, of what is being drawn. */
  readonly corners: readonly Corner[];
  /** The obstacle whose fields and corners are shown. */
  readonly obstacleId: string | null;
};

export const useGroundView = create<GroundView>(() => ({
  open: false,
  tool: null,
  corners: [],
  obstacleId: null,
}));

export const lookAtGround = (at: Partial<GroundView>): void => useGroundView.setState(at);

/** Puts the tool away, and what was begun with it. */
export const endTool = (): void => lookAtGround({ tool: null, corners: [] });
