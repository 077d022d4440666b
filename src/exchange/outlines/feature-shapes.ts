import { metresPerDegree } from '../../core/place/metres-per-degree.ts';
import { cosDeg, sinDeg } from '../../core/units/angle.ts';
import { isFields } from '../file-part.ts';
import type { Shape } from './outline-tags.ts';

export type RawShape = {
  readonly shape: Shape;
  /** An area's rings, the outer first; a line's or point's corners as one list. */
  readonly rings: readonly (readonly unknown[])[];
};

const DEEPEST = 4;

/** What a geometry is made of; a string for what cannot stand on the ground. */
export function shapesOf(geometry: unknown, depth = 0): readonly (RawShape | string)[] {
  if (!isFields(geometry)) return ['without a geometry'];
  const { type, coordinates, geometries } = geometry;
  if (type === 'GeometryCollection')
    return Array.isArray(geometries) && depth < DEEPEST
      ? geometries.flatMap((part: unknown) => shapesOf(part, depth + 1))
      : ['a collection of nothing, or nested too deep'];
  if (!Array.isArray(coordinates)) return ['without coordinates'];
  const list = coordinates as readonly unknown[];
  switch (type) {
    case 'Polygon':
      return [areaOf(list)];
    case 'MultiPolygon':
      return list.map(areaOf);
    case 'LineString':
      return [{ shape: 'line', rings: [list] }];
    case 'MultiLineString':
      return list.map((line) =>
        Array.isArray(line) ? { shape: 'line', rings: [line] } : 'without coordinates',
      );
    case 'Point':
      return [{ shape: 'point', rings: [[list]] }];
    case 'MultiPoint':
      return list.map((point) => ({ shape: 'point', rings: [[point]] }));
    default:
      return ['of no geometry that GeoJSON knows'];
  }
}

function areaOf(rings: unknown): RawShape | string {
  if (!Array.isArray(rings) || rings.length === 0) return 'without coordinates';
  const lists = rings as readonly unknown[];
  return lists.every((ring) => Array.isArray(ring))
    ? { shape: 'area', rings: lists as readonly (readonly unknown[])[] }
    : 'without coordinates';
}

/** Whether a line ends where it began and so can hold an area. */
export function comesRound(line: readonly unknown[]): boolean {
  const [first, last] = [line[0], line.at(-1)];
  return (
    line.length > 3 &&
    Array.isArray(first) &&
    Array.isArray(last) &&
    first[0] === last[0] &&
    first[1] === last[1]
  );
}

const CROWN_CORNERS = 12;

/** A crown round its trunk; what is no position comes back as it is. */
export function crownRound(position: unknown, diameterM: number): readonly unknown[] {
  const [longitudeDeg, latitudeDeg] = Array.isArray(position) ? (position as unknown[]) : [];
  if (typeof longitudeDeg !== 'number' || typeof latitudeDeg !== 'number') return [position];
  if (Math.abs(longitudeDeg) > 180 || Math.abs(latitudeDeg) > 89) return [position];
  const { eastM, northM } = metresPerDegree(latitudeDeg);
  return Array.from({ length: CROWN_CORNERS }, (_, corner) => {
    const [east, north] = onUnitCircle(corner);
    const eastDeg = longitudeDeg + ((diameterM / 2) * east) / eastM;
    return [
      eastDeg > 180 ? eastDeg - 360 : eastDeg < -180 ? eastDeg + 360 : eastDeg,
      latitudeDeg + ((diameterM / 2) * north) / northM,
    ];
  });
}

const onUnitCircle = (corner: number): readonly [number, number] => {
  const azimuthDeg = (360 * corner) / CROWN_CORNERS;
  return [sinDeg(azimuthDeg), cosDeg(azimuthDeg)];
};
