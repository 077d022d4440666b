import type { Edit } from './edits.ts';
import type { ObstacleEntry, OutlineSet } from './obstacle-schema.ts';
import type { Shoot } from './shoot.ts';

/** Documents are JSON; what is put in must not stay in the caller's hands. */
const copyOf = <Entry>(entry: Entry): Entry => JSON.parse(JSON.stringify(entry)) as Entry;

export const addObstacle =
  (id: string, obstacle: ObstacleEntry): Edit<Shoot> =>
  (shoot) => {
    shoot.obstacles[id] = copyOf(obstacle);
  };

/** An outline is one fact: it is replaced whole. */
export const editObstacle =
  (id: string, fields: Partial<ObstacleEntry>): Edit<Shoot> =>
  (shoot) => {
    const obstacle = shoot.obstacles[id];
    if (obstacle !== undefined) Object.assign(obstacle, copyOf(fields));
  };

export const removeObstacle =
  (id: string): Edit<Shoot> =>
  (shoot) => {
    delete shoot.obstacles[id];
  };

export const addOutlineSet =
  (id: string, outlines: OutlineSet): Edit<Shoot> =>
  (shoot) => {
    shoot.outlineSets[id] = copyOf(outlines);
  };

export const removeOutlineSet =
  (id: string): Edit<Shoot> =>
  (shoot) => {
    delete shoot.outlineSets[id];
  };

/** Takes one outline out of its set; its text stays, so that the numbers of the others do. */
export const hideOutline =
  (setId: string, index: number): Edit<Shoot> =>
  (shoot) => {
    const outlines = shoot.outlineSets[setId];
    if (outlines !== undefined) outlines.hidden[String(index)] = true;
  };

/** An imported outline becomes an obstacle of its own and leaves its set, both or neither. */
export const takeOverOutline =
  (from: {
    readonly setId: string;
    readonly index: number;
    readonly obstacleId: string;
    readonly obstacle: ObstacleEntry;
  }): Edit<Shoot> =>
  (shoot) => {
    if (shoot.outlineSets[from.setId] === undefined) return;
    hideOutline(from.setId, from.index)(shoot);
    addObstacle(from.obstacleId, from.obstacle)(shoot);
  };
