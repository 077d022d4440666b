import type { MultiLineString, MultiPolygon, Position } from 'geojson';
import type { PixelBox } from './free-boxes.ts';
import { nearestCopyDeg } from './map-place.ts';
import { longitudeAt, mercatorX, mercatorY, WORLD_PX } from './web-mercator.ts';

/** Positions as [longitude, latitude] in degrees. */
export type MapOutline = { readonly land: MultiPolygon; readonly borders: MultiLineString };

/** '50m' for the world, '10m' for a region: scales of 1 : 50 and 1 : 10 million. */
export type OutlineDetail = '50m' | '10m';

/** A line in pixels of the world at zoom 0, as x, y, x, y …, and the box it fills. */
export type FlatLine = { readonly points: Float64Array; readonly box: PixelBox };

export type FlatPolygon = { readonly rings: readonly FlatLine[]; readonly box: PixelBox };

export type FlatOutline = {
  readonly polygons: readonly FlatPolygon[];
  readonly borders: readonly FlatLine[];
};

/**
 * Projected once, so that drawing a tile only scales. What crosses the date line is drawn without
 * a break and stands in the world twice, once on either side of it.
 */
export const flatOutline = ({ land, borders }: MapOutline): FlatOutline => ({
  polygons: land.coordinates.flatMap(([outer, ...holes]) => {
    if (!outer) return [];
    const edge = flatRing(outer, outer[0]?.[0] ?? 0);
    const middleDeg = longitudeAt((edge.box.left + edge.box.right) / 2);
    const rings = [edge, ...holes.map((hole) => flatRing(hole, middleDeg))];
    return copiesOver(edge.box).map((shift) => ({
      rings: rings.map((ring) => shifted(ring, shift)),
      box: shiftedBox(edge.box, shift),
    }));
  }),
  borders: borders.coordinates.flatMap((positions) => {
    const line = flatLine(unbroken(positions, positions[0]?.[0] ?? 0));
    return copiesOver(line.box).map((shift) => shifted(line, shift));
  }),
});

/** A ring that goes once round the earth is closed along the edge of the world behind its pole. */
const flatRing = (ring: readonly Position[], nearDeg: number): FlatLine => {
  const line = unbroken(ring, nearDeg);
  const first = line[0];
  const last = line.at(-1);
  if (!first || !last || Math.abs(first[0] - last[0]) < 180) return flatLine(line);
  const poleDeg = first[1] < 0 ? -90 : 90;
  return flatLine([...line, [last[0], poleDeg], [first[0], poleDeg], first]);
};

type LonLat = readonly [longitudeDeg: number, latitudeDeg: number];

/** Longitudes go on beyond ±180 instead of jumping. */
const unbroken = (line: readonly Position[], nearDeg: number): readonly LonLat[] => {
  let beforeDeg = nearDeg;
  return line.map(([longitudeDeg = Number.NaN, latitudeDeg = Number.NaN]) => {
    beforeDeg = nearestCopyDeg(longitudeDeg, beforeDeg);
    return [beforeDeg, latitudeDeg];
  });
};

const flatLine = (line: readonly LonLat[]): FlatLine => {
  const points = new Float64Array(line.length * 2);
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  line.forEach(([longitudeDeg, latitudeDeg], index) => {
    const x = mercatorX(longitudeDeg);
    const y = mercatorY(latitudeDeg);
    points[index * 2] = x;
    points[index * 2 + 1] = y;
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  });
  return { points, box: { left, top, right, bottom } };
};

/** How far to shift a box so that each of its parts stands in the world once. */
const copiesOver = ({ left, right }: PixelBox): readonly number[] => [
  0,
  ...(left < 0 ? [WORLD_PX] : []),
  ...(right > WORLD_PX ? [-WORLD_PX] : []),
];

const shifted = ({ points, box }: FlatLine, shift: number): FlatLine =>
  shift === 0
    ? { points, box }
    : {
        points: points.map((value, index) => (index % 2 === 0 ? value + shift : value)),
        box: shiftedBox(box, shift),
      };

const shiftedBox = (box: PixelBox, shift: number): PixelBox => ({
  ...box,
  left: box.left + shift,
  right: box.right + shift,
});
