import type { Corner, Obstacle } from '../../core/skyline/obstacle.ts';
import { isFields } from '../file-part.ts';

export type SetOutline = Obstacle & {
  /** Its number in the set. */
  readonly index: number;
  /** '' for none. */
  readonly name: string;
};

/**
 * The outlines of a kept set, less those taken out, quickly. What is not as this project writes it
 * is passed over: a shoot from elsewhere may hold anything here.
 */
export function outlinesOfSet(
  geoJson: string,
  hidden: Readonly<Record<string, true>>,
): readonly SetOutline[] {
  const collection = parsed(geoJson);
  const features = isFields(collection) ? collection['features'] : null;
  if (!Array.isArray(features)) return [];
  return features.flatMap((feature: unknown, index) => {
    const outline = Object.hasOwn(hidden, String(index)) ? null : outlineFrom(feature, index);
    return outline === null ? [] : [outline];
  });
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function outlineFrom(feature: unknown, index: number): SetOutline | null {
  if (!isFields(feature) || !isFields(feature['geometry']) || !isFields(feature['properties']))
    return null;
  const told = keptProperties(feature['properties']);
  const rings = ringsFrom(feature['geometry']);
  if (told === null || rings === null) return null;
  const [outer = [], ...holes] = rings;
  const [first, last] = [outer[0], outer.at(-1)];
  const closed = outer.length > 3 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
  return {
    ...told,
    index,
    closed,
    outline: closed ? outer.slice(0, -1) : outer,
    ...(holes.length === 0 ? {} : { holes: holes.map((hole) => hole.slice(0, -1)) }),
  };
}

type Told = Omit<SetOutline, 'index' | 'closed' | 'outline' | 'holes'>;

/** Properties as `writeOutlinesGeoJson` writes them; null where they are not. */
export function keptProperties(properties: Readonly<Record<string, unknown>>): Told | null {
  const { kind, height, name, footElevationM } = properties;
  if (kind !== 'building' && kind !== 'wall' && kind !== 'trees') return null;
  if (!isWithin(height, 0.1, 1000)) return null;
  const { min_height: base = 0, passesInLeaf = 0, passesBare = 0 } = properties;
  if (!isWithin(base, 0, 100) || !isWithin(passesInLeaf, 0, 1) || !isWithin(passesBare, 0, 1))
    return null;
  return {
    kind,
    heightM: height,
    crownBaseM: base,
    passesInLeaf,
    passesBare,
    footElevationM: isWithin(footElevationM, -450, 9000) ? footElevationM : null,
    name: typeof name === 'string' ? name : '',
  };
}

const isWithin = (value: unknown, low: number, high: number): value is number =>
  typeof value === 'number' && value >= low && value <= high;

function ringsFrom(geometry: Readonly<Record<string, unknown>>): readonly Corner[][] | null {
  const { type, coordinates } = geometry;
  const lists = type === 'Polygon' ? coordinates : type === 'LineString' ? [coordinates] : null;
  if (!Array.isArray(lists) || lists.length === 0) return null;
  return lists.every(isCornerList) ? lists : null;
}

const isCornerList = (list: unknown): list is Corner[] =>
  Array.isArray(list) && list.length > 1 && list.every(isCorner);

const isCorner = (position: unknown): position is Corner =>
  Array.isArray(position) && isWithin(position[0], -180, 180) && isWithin(position[1], -90, 90);
