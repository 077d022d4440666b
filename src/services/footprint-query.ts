import { metresPerDegree } from '../core/place/metres-per-degree.ts';
import type { GeoPoint } from '../core/place/geo-point.ts';
import { wrapDeg180 } from '../core/units/angle.ts';

/** Square round a place, its half side; north and south held at the poles. */
export type FootprintArea = {
  readonly place: GeoPoint;
  readonly halfSideM: number;
};

export const MOST_HALF_SIDE_M = 2000;

/** Seconds and bytes that the database may spend on a question. */
const DATABASE_SECONDS = 25;
const DATABASE_BYTES = 64 * 2 ** 20;

const WANTED = [
  'way["building"]',
  'relation["type"="multipolygon"]["building"]',
  'way["building:part"]',
  'relation["type"="multipolygon"]["building:part"]',
  'way["man_made"~"^(chimney|communications_tower|cooling_tower|gasometer|lighthouse|silo|storage_tank|tower|water_tower)$"]',
  'way["barrier"~"^(wall|city_wall|retaining_wall|fence|hedge)$"]',
  'way["natural"~"^(tree_row|wood)$"]',
  'relation["type"="multipolygon"]["natural"="wood"]',
  'way["landuse"="forest"]',
  'relation["type"="multipolygon"]["landuse"="forest"]',
  'node["natural"="tree"]',
];

/** The question in the database's language: outlines that touch the area, with tags and corners. */
export function footprintQuery(area: FootprintArea): string {
  const boxes = boxesOf(area);
  const parts = boxes.flatMap((box) => WANTED.map((wanted) => `${wanted}(${box});`));
  return `[out:json][timeout:${DATABASE_SECONDS}][maxsize:${DATABASE_BYTES}];(${parts.join('')});out geom;`;
}

/** South, west, north, east to 1e-5°, a metre; two boxes over the antimeridian. */
function boxesOf({ place, halfSideM }: FootprintArea): readonly string[] {
  const { northM, eastM } = metresPerDegree(place.latitudeDeg);
  const south = Math.max(-90, place.latitudeDeg - halfSideM / northM);
  const north = Math.min(90, place.latitudeDeg + halfSideM / northM);
  const halfEastDeg = eastM > 0 ? halfSideM / eastM : Infinity;
  const box = (west: number, east: number): string =>
    [south, west, north, east].map((angleDeg) => angleDeg.toFixed(5)).join(',');
  if (halfEastDeg >= 180 || south === -90 || north === 90) return [box(-180, 180)];
  const west = place.longitudeDeg - halfEastDeg;
  const east = place.longitudeDeg + halfEastDeg;
  return west < -180 || east > 180
    ? [box(wrapDeg180(west), 180), box(-180, wrapDeg180(east))]
    : [box(west, east)];
}
