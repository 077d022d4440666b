import type { Feature, FeatureCollection, LineString, Polygon, Position } from 'geojson';

import type { Corner, Obstacle } from '../../core/skyline/obstacle.ts';
import { clockwise, counterClockwise } from '../../core/skyline/simple-rings.ts';
import { cleanOutline } from './clean-outline.ts';

export type NamedObstacle = Obstacle & { readonly name?: string };

/**
 * Outlines as a feature collection of RFC 7946, one feature each, in their order; one that crosses
 * the antimeridian becomes two. Closed ones go as polygons, lines and walls that run round as lines.
 * `height` and `min_height` are what other programs read, the rest is this project's.
 */
export function writeOutlinesGeoJson(obstacles: readonly NamedObstacle[]): string {
  const collection: FeatureCollection<Polygon | LineString> = {
    type: 'FeatureCollection',
    features: obstacles.flatMap(withinAntimeridian).map(featureOf),
  };
  return JSON.stringify(collection);
}

function withinAntimeridian(obstacle: NamedObstacle): readonly NamedObstacle[] {
  const { outline, closed } = obstacle;
  const isWithin = outline.every(
    ([longitudeDeg], index) =>
      Math.abs(longitudeDeg - (outline[index - 1]?.[0] ?? longitudeDeg)) <= 180,
  );
  if (isWithin) return [obstacle];
  const isRing = closed && outline.length > 2;
  const clean = cleanOutline(outline, { isRing });
  if (typeof clean === 'string') return [obstacle];
  const { holes: _, ...filled } = obstacle;
  return clean.pieces.map((piece) => ({ ...filled, outline: piece }));
}

const featureOf = (obstacle: NamedObstacle): Feature<Polygon | LineString> => ({
  type: 'Feature',
  properties: {
    ...(obstacle.name === undefined || obstacle.name === '' ? {} : { name: obstacle.name }),
    kind: obstacle.kind,
    height: rounded(obstacle.heightM, 100),
    ...(obstacle.crownBaseM > 0 ? { min_height: rounded(obstacle.crownBaseM, 100) } : {}),
    ...(obstacle.kind === 'trees'
      ? {
          passesInLeaf: rounded(obstacle.passesInLeaf, 1000),
          passesBare: rounded(obstacle.passesBare, 1000),
        }
      : {}),
    ...(obstacle.footElevationM === null ? {} : { footElevationM: obstacle.footElevationM }),
  },
  geometry: geometryOf(obstacle),
});

function geometryOf({ kind, closed, outline, holes = [] }: Obstacle): Polygon | LineString {
  if (!closed || outline.length < 3)
    return { type: 'LineString', coordinates: outline.map(positionOf) };
  if (kind === 'wall') return { type: 'LineString', coordinates: closedRing(outline) };
  return {
    type: 'Polygon',
    coordinates: [
      closedRing(counterClockwise(outline)),
      ...holes.map((hole) => closedRing(clockwise(hole))),
    ],
  };
}

const closedRing = (corners: readonly Corner[]): Position[] =>
  [...corners, ...corners.slice(0, 1)].map(positionOf);

const positionOf = ([longitudeDeg, latitudeDeg]: Corner): Position => [
  rounded(longitudeDeg, 1e6),
  rounded(latitudeDeg, 1e6),
];

const rounded = (value: number, parts: number): number => Math.round(value * parts) / parts;
