import type { ObstacleKind } from '../../../../core/plan/obstacle-schema.ts';
import type { DrawTool } from '../../../state/ground-view.ts';

export const KIND_WORDS: Readonly<Record<ObstacleKind, string>> = {
  building: 'building',
  wall: 'wall',
  trees: 'trees',
};

/** What is drawn with a tool, and what its outline is. */
export const TOOL_WORDS: Readonly<
  Record<
    DrawTool,
    { readonly button: string; readonly name: string; readonly kind: ObstacleKind; readonly closed: boolean }
  >
> = {
  building: { button: 'Draw a building', name: 'Building', kind: 'building', closed: true },
  wall: { button: 'Draw a wall', name: 'Wall', kind: 'wall', closed: false },
  'tree-row': { button: 'Draw a row of trees', name: 'Row of trees', kind: 'trees', closed: false },
  'tree-stand': { button: 'Draw a stand of trees', name: 'Trees', kind: 'trees', closed: true },
};

/** 'Wall', then 'Wall 2', 'Wall 3': a name not yet taken. */
export function freeName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  let number = 2;
  while (taken.includes(`${name} ${number}`)) number += 1;
  return `${name} ${number}`;
}

/** 'Of 3 outlines', '1 outline'. */
export const counted = (count: number, one: string, many: string): string =>
  `${count.toLocaleString('en-GB')} ${count === 1 ? one : many}`;
