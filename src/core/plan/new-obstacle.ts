import { TREE_LIGHT, type Corner } from '../skyline/obstacle.ts';
import type { ObstacleEntry } from './obstacle-schema.ts';

export const DRAWN_ORIGIN = 'drawn on the map';
export const ASSUMED_ORIGIN = `${DRAWN_ORIGIN}, height assumed`;

/** Until someone measures: two storeys, a garden wall, grown street trees. Common practice. */
const ASSUMED = {
  building: { heightM: 6, crownBaseM: 0, passesInLeaf: 0, passesBare: 0 },
  wall: { heightM: 2.5, crownBaseM: 0, passesInLeaf: 0, passesBare: 0 },
  trees: { heightM: 10, crownBaseM: 2, ...TREE_LIGHT.broadleaved },
} as const;

/** An obstacle just drawn: its outline is known, its height is assumed and says so. */
export const newObstacle = (drawn: {
  readonly order: string;
  readonly name: string;
  readonly kind: ObstacleEntry['kind'];
  readonly closed: boolean;
  readonly corners: readonly Corner[];
  /** Civil date. */
  readonly dated: string;
}): ObstacleEntry => ({
  order: drawn.order,
  name: drawn.name,
  kind: drawn.kind,
  closed: drawn.closed,
  outline: drawn.corners.map(([longitudeDeg, latitudeDeg]) => [longitudeDeg, latitudeDeg]),
  ...ASSUMED[drawn.kind],
  footElevationM: null,
  origin: ASSUMED_ORIGIN,
  dated: drawn.dated,
});
