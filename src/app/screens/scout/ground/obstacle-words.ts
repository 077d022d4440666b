import type { DrawnClassName } from '../../../../core/plan/new-obstacle.ts';
import type { ObstacleKind } from '../../../../core/plan/obstacle-schema.ts';

export const KIND_WORDS: Readonly<Record<ObstacleKind, string>> = {
  building: 'building',
  wall: 'wall',
  trees: 'trees',
};

export const DRAW_WORDS: Readonly<Record<DrawnClassName, string>> = {
  building: 'Draw a building',
  wall: 'Draw a wall',
  'tree-row': 'Draw a row of trees',
  'tree-stand': 'Draw a wood',
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
