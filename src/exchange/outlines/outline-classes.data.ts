import { TREE_LIGHT, type Obstacle } from '../../core/skyline/obstacle.ts';

type OutlineClass = Pick<Obstacle, 'kind' | 'heightM' | 'crownBaseM'> & {
  readonly many: string;
  readonly light: {
    readonly evergreen: Pick<Obstacle, 'passesInLeaf' | 'passesBare'>;
    readonly broadleaved: Pick<Obstacle, 'passesInLeaf' | 'passesBare'>;
  };
};

const OPAQUE = { passesInLeaf: 0, passesBare: 0 };
const NO_LIGHT = { evergreen: OPAQUE, broadleaved: OPAQUE };
const WOOD_LIGHT = { evergreen: TREE_LIGHT.wood, broadleaved: TREE_LIGHT.wood };

/** What an outline is taken to be where it does not say; heights of common practice. */
export const OUTLINE_CLASSES = {
  building: { kind: 'building', heightM: 6, crownBaseM: 0, many: 'buildings', light: NO_LIGHT },
  wall: { kind: 'wall', heightM: 2, crownBaseM: 0, many: 'walls', light: NO_LIGHT },
  fence: { kind: 'wall', heightM: 1.5, crownBaseM: 0, many: 'fences', light: NO_LIGHT },
  hedge: { kind: 'trees', heightM: 1.5, crownBaseM: 0, many: 'hedges', light: TREE_LIGHT },
  tree: { kind: 'trees', heightM: 8, crownBaseM: 2, many: 'single trees', light: TREE_LIGHT },
  treeRow: { kind: 'trees', heightM: 8, crownBaseM: 2, many: 'rows of trees', light: TREE_LIGHT },
  wood: { kind: 'trees', heightM: 15, crownBaseM: 0, many: 'woods', light: WOOD_LIGHT },
} as const satisfies Readonly<Record<string, OutlineClass>>;

export type OutlineClassName = keyof typeof OUTLINE_CLASSES;

/** A floor of a house, and the width of a crown of unknown width. Common practice. */
export const FLOOR_M = 3;
export const CROWN_DIAMETER_M = 6;

/** Structures, not buildings by name, that stand as solid as one. */
export const SOLID_STRUCTURES: ReadonlySet<string> = new Set([
  'chimney',
  'communications_tower',
  'cooling_tower',
  'gasometer',
  'lighthouse',
  'silo',
  'storage_tank',
  'tower',
  'water_tower',
]);

export const WALL_BARRIERS: Readonly<Record<string, OutlineClassName>> = {
  wall: 'wall',
  city_wall: 'wall',
  retaining_wall: 'wall',
  fence: 'fence',
  hedge: 'hedge',
};

/** Keys by which maps say what a thing is, when it is none of the things that hide sky. */
export const OTHER_THINGS = [
  'highway',
  'railway',
  'waterway',
  'aeroway',
  'barrier',
  'natural',
  'landuse',
  'leisure',
  'amenity',
  'man_made',
  'power',
  'boundary',
  'place',
  'route',
  'public_transport',
  'tourism',
  'shop',
  'office',
  'historic',
] as const;
