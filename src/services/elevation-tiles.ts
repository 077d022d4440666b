import type { GeoPoint } from '../core/place/geo-point.ts';
import { metresPerDegree } from '../core/place/metres-per-degree.ts';
import {
  groundPerPixelM,
  MERCATOR_LIMIT_DEG,
  mercatorLatitudeDeg,
  mercatorShareX,
  mercatorShareY,
  type TileNumber,
} from '../core/skyline/web-mercator.ts';

/** How far out a pixel may cover how much ground: finer near, where a metre is more of an angle. */
const RINGS = [
  { outToM: 12_000, pixelM: 40 },
  { outToM: 40_000, pixelM: 80 },
] as const;

const MAX_ZOOM = 15;

/** The tiles that touch each ring's circle, the finest first; none beyond the square of the projection. */
export const elevationTiles = (place: GeoPoint): readonly TileNumber[] =>
  RINGS.flatMap(({ outToM, pixelM }) => tilesWithin(place, outToM, zoomFor(place, pixelM)));

/** The coarsest zoom that is fine enough. */
const zoomFor = ({ latitudeDeg }: GeoPoint, pixelM: number): number =>
  Math.min(MAX_ZOOM, Math.max(0, Math.ceil(Math.log2(groundPerPixelM(latitudeDeg, 0) / pixelM))));

function tilesWithin(place: GeoPoint, reachM: number, zoom: number): readonly TileNumber[] {
  if (Math.abs(place.latitudeDeg) >= MERCATOR_LIMIT_DEG) return [];
  const world = 2 ** zoom;
  const { northM, eastM } = metresPerDegree(place.latitudeDeg);
  const reachDeg = reachM / northM;
  const middle = mercatorShareX(place.longitudeDeg) * world;
  const eastTiles = (reachM / eastM / 360) * world;
  const north = Math.min(MERCATOR_LIMIT_DEG, place.latitudeDeg + reachDeg);
  const south = Math.max(-MERCATOR_LIMIT_DEG, place.latitudeDeg - reachDeg);
  const first = Math.max(0, Math.floor(mercatorShareY(north) * world));
  const last = Math.min(world - 1, Math.floor(mercatorShareY(south) * world));
  const tiles: TileNumber[] = [];
  for (let y = first; y <= last; y += 1)
    for (let x = Math.floor(middle - eastTiles); x <= Math.floor(middle + eastTiles); x += 1) {
      const nearestLatitudeDeg = between(
        place.latitudeDeg,
        mercatorLatitudeDeg((y + 1) / world),
        mercatorLatitudeDeg(y / world),
      );
      const acrossM = ((between(middle, x, x + 1) - middle) / world) * 360 * eastM;
      const alongM = (nearestLatitudeDeg - place.latitudeDeg) * northM;
      if (Math.hypot(acrossM, alongM) <= reachM)
        tiles.push({ zoom, x: ((x % world) + world) % world, y });
    }
  return tiles;
}

const between = (value: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, value));
