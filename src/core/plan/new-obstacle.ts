import { TREE_LIGHT, type Corner } from '../skyline/obstacle.ts';
import type { ObstacleEntry } from './obstacle-schema.ts';

export const DRAWN_ORIGIN = 'drawn on the map';
export const ASSUMED_ORIGIN = `${DRAWN_ORIGIN}, height assumed`;

type DrawnClass = Pick<
  ObstacleEntry,
  'name' | 'kind' | 'closed' | 'heightM' | 'crownBaseM' | 'passesInLeaf' | 'passesBare'
>;

const OPAQUE = { passesInLeaf: 0, passesBare: 0 };

/** What can be drawn, and how tall it is until someone measures; heights of common practice. */
export const DRAWN_CLASSES = {
  building: {
    name: 'Building',
    kind: 'building',
    closed: true,
    heightM: 6,
    crownBaseM: 0,
    ...OPAQUE,
  },
  wall: { name: 'Wall', kind: 'wall', closed: false, heightM: 2, crownBaseM: 0, ...OPAQUE },
  'tree-row': {
    name: 'Row of trees',
    kind: 'trees',
    closed: false,
    heightM: 8,
    crownBaseM: 2,
    ...TREE_LIGHT.broadleaved,
  },
  'tree-stand': {
    name: 'Wood',
    kind: 'trees',
    closed: true,
    heightM: 15,
    crownBaseM: 0,
    ...TREE_LIGHT.wood,
  },
} as const satisfies Readonly<Record<string, DrawnClass>>;

export type DrawnClassName = keyof typeof DRAWN_CLASSES;

/** An obstacle just drawn: its outline is known, its height is assumed and says so. */
export const newObstacle = (drawn: {
  readonly order: string;
  readonly name: string;
  readonly as: DrawnClassName;
  readonly corners: readonly Corner[];
  /** Civil date. */
  readonly dated: string;
}): ObstacleEntry => ({
  ...DRAWN_CLASSES[drawn.as],
  order: drawn.order,
  name: drawn.name,
  outline: drawn.corners.map(([longitudeDeg, latitudeDeg]) => [longitudeDeg, latitudeDeg]),
  footElevationM: null,
  origin: ASSUMED_ORIGIN,
  dated: drawn.dated,
});
