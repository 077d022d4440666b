import type { Obstacle } from '../../core/skyline/obstacle.ts';
import { lengthM } from './length-text.ts';
import {
  CROWN_DIAMETER_M,
  FLOOR_M,
  OTHER_THINGS,
  OUTLINE_CLASSES,
  SOLID_STRUCTURES,
  WALL_BARRIERS,
  type OutlineClassName,
} from './outline-classes.data.ts';

export type Tags = Readonly<Record<string, unknown>>;
export type Shape = 'area' | 'line' | 'point';

export type HeightFrom = 'given' | 'floors' | 'assumed' | 'not-believed';

export type TaggedOutline = Omit<Obstacle, 'outline' | 'closed' | 'holes'> & {
  readonly className: OutlineClassName;
  readonly heightFrom: HeightFrom;
  /** The height as it was written, where it was not believed. */
  readonly heightText: string;
  /** Stands solid on its area; false: only its edge stands. */
  readonly isFilled: boolean;
};

/** Heights above this are a slip of the pen; the tallest building stands under 900 m. */
export const TALLEST_M = 1000;
const LOWEST_M = 0.1;
const HIGHEST_BASE_M = 100;

/**
 * What a feature is and how tall, by the usual tags of open maps: building, building:part, barrier,
 * natural, landuse, height, building:levels, min_height, leaf_type, leaf_cycle. A string says why it
 * hides no sky.
 */
export function taggedOutline(tags: Tags, shape: Shape): TaggedOutline | string {
  const tag = tagReader(tags);
  if (tag('location') === 'underground' || tag('building') === 'no')
    return 'underground, or said to be no building';
  const found = classOf(tag, shape);
  if (!found.ok) return found.why;
  const { className } = found;
  const standard = OUTLINE_CLASSES[className];
  const height = heightOf(tags, tag, standard.heightM);
  const isEvergreen =
    tag('leaf_cycle') === 'evergreen' ||
    (tag('leaf_cycle') !== 'deciduous' &&
      (tag('leaf_type') === 'needleleaved' || className === 'hedge'));
  return {
    className,
    kind: className === 'wall' && found.isFilled ? 'building' : standard.kind,
    ...height,
    crownBaseM: baseOf(tags, height.heightM, standard.crownBaseM),
    ...(isEvergreen ? standard.light.evergreen : standard.light.broadleaved),
    footElevationM: null,
    isFilled: found.isFilled,
  };
}

type TagReader = (name: string) => string;

/** Tags in lower case, '' where there is none. */
const tagReader =
  (tags: Tags): TagReader =>
  (name) => {
    const value = Object.hasOwn(tags, name) ? tags[name] : undefined;
    return typeof value === 'string' ? value.trim().toLowerCase() : '';
  };

type Found =
  | { readonly ok: true; readonly className: OutlineClassName; readonly isFilled: boolean }
  | { readonly ok: false; readonly why: string };

const as = (className: OutlineClassName, isFilled: boolean): Found => ({
  ok: true,
  className,
  isFilled,
});

function classOf(tag: TagReader, shape: Shape): Found {
  const isArea = shape === 'area';
  const barrier = WALL_BARRIERS[tag('barrier')];
  if (shape !== 'point') {
    if (isNamed(tag('building')) || isNamed(tag('building:part'))) return as('building', isArea);
    if (SOLID_STRUCTURES.has(tag('man_made'))) return as('building', isArea);
    if (barrier !== undefined)
      return as(barrier, isArea && (tag('area') === 'yes' || barrier === 'hedge'));
    if (tag('natural') === 'tree_row') return as('treeRow', false);
    if (tag('natural') === 'wood' || tag('landuse') === 'forest') return as('wood', isArea);
  } else if (tag('natural') === 'tree') return as('tree', true);
  const other = OTHER_THINGS.find((key) => tag(key) !== '');
  if (other !== undefined)
    return { ok: false, why: `tagged ${other}, which is no building, wall or trees` };
  if (shape === 'point') return { ok: false, why: 'a point that is no tree' };
  return isArea ? as('building', true) : as('wall', false);
}

const isNamed = (value: string): boolean => value !== '' && value !== 'no';

const HEIGHT_KEYS = ['height', 'building:height', 'est_height', 'Height', 'HEIGHT', 'height_m'];

type Height = Pick<TaggedOutline, 'heightM' | 'heightFrom' | 'heightText'>;

function heightOf(tags: Tags, tag: TagReader, standardM: number): Height {
  const written = firstOf(tags, HEIGHT_KEYS);
  const heightM = lengthM(written);
  if (heightM !== null && isBelievable(heightM))
    return { heightM: toCentimetre(heightM), heightFrom: 'given', heightText: '' };
  const floors = count(firstOf(tags, ['building:levels', 'levels']));
  if (floors !== null) {
    const roofM = lengthM(tags['roof:height']) ?? FLOOR_M * (count(tags['roof:levels']) ?? 0);
    const byFloorsM = FLOOR_M * floors + Math.max(0, roofM);
    if (isBelievable(byFloorsM))
      return { heightM: toCentimetre(byFloorsM), heightFrom: 'floors', heightText: '' };
  }
  const said = written ?? firstOf(tags, ['building:levels', 'levels']);
  return said === undefined || said === null || tag('height') === 'unknown'
    ? { heightM: standardM, heightFrom: 'assumed', heightText: '' }
    : {
        heightM: standardM,
        heightFrom: 'not-believed',
        heightText: (typeof said === 'string' ? said : JSON.stringify(said)).slice(0, 20),
      };
}

const isBelievable = (heightM: number): boolean => heightM >= LOWEST_M && heightM <= TALLEST_M;

/** Of a part of a building that begins above the ground, or of a crown; always under the top. */
function baseOf(tags: Tags, heightM: number, standardM: number): number {
  const levels = count(firstOf(tags, ['building:min_level', 'min_level']));
  const baseM = lengthM(tags['min_height']) ?? (levels === null ? standardM : FLOOR_M * levels);
  const believedM = baseM >= 0 && baseM <= HIGHEST_BASE_M ? baseM : standardM;
  return toCentimetre(believedM < heightM ? believedM : Math.min(standardM, heightM / 2));
}

export function crownDiameterM(tags: Tags): {
  readonly diameterM: number;
  readonly isAssumed: boolean;
} {
  const diameterM = lengthM(firstOf(tags, ['diameter_crown', 'crown_diameter']));
  return diameterM !== null && diameterM >= 0.5 && diameterM <= 50
    ? { diameterM, isAssumed: false }
    : { diameterM: CROWN_DIAMETER_M, isAssumed: true };
}

const firstOf = (tags: Tags, names: readonly string[]): unknown =>
  names
    .map((name) => (Object.hasOwn(tags, name) ? tags[name] : undefined))
    .find((value) => value !== undefined && value !== null && value !== '');

/** A count of floors, halves allowed. */
function count(value: unknown): number | null {
  const number =
    typeof value === 'string' && /^\s*\d+(?:[.,]\d+)?\s*$/.test(value)
      ? Number(value.replace(',', '.'))
      : value;
  return typeof number === 'number' && Number.isFinite(number) && number >= 0 ? number : null;
}

const toCentimetre = (lengthInM: number): number => Math.round(100 * lengthInM) / 100;
