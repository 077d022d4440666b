/** GeoJSON features with the tags of the database as properties; what has no corners is counted. */
export type ElementFeatures = {
  readonly features: readonly ElementFeature[];
  readonly withoutCorners: number;
};

type Position = readonly [longitudeDeg: number, latitudeDeg: number];
type Fields = Readonly<Record<string, unknown>>;

export type ElementFeature = {
  readonly type: 'Feature';
  readonly properties: Fields;
  readonly geometry:
    | { readonly type: 'Point'; readonly coordinates: Position }
    | { readonly type: 'LineString'; readonly coordinates: readonly Position[] }
    | { readonly type: 'MultiPolygon'; readonly coordinates: readonly Position[][][] };
};

/**
 * Nodes, ways and multipolygons as the open map database sends them, corners included. A way part of
 * a multipolygon that carries the same outline stays: shadows over shadows are no darker than one.
 */
export function featuresOfElements(elements: readonly unknown[]): ElementFeatures {
  const features: ElementFeature[] = [];
  let withoutCorners = 0;
  for (const element of elements) {
    const geometry = isFields(element) ? geometryOf(element) : null;
    if (!isFields(element) || geometry === null) withoutCorners += 1;
    else
      features.push({
        type: 'Feature',
        properties: isFields(element['tags']) ? element['tags'] : {},
        geometry,
      });
  }
  return { features, withoutCorners };
}

function geometryOf(element: Fields): ElementFeature['geometry'] | null {
  switch (element['type']) {
    case 'node': {
      const position = positionOf(element);
      return position === null ? null : { type: 'Point', coordinates: position };
    }
    case 'way': {
      const coordinates = positionsOf(element['geometry']);
      return coordinates.length < 2 ? null : { type: 'LineString', coordinates };
    }
    case 'relation':
      return multipolygonOf(listOf(element['members']));
    default:
      return null;
  }
}

/** Outer rings, each with the inner ones that begin inside it. */
function multipolygonOf(members: readonly unknown[]): ElementFeature['geometry'] | null {
  const lines = (role: 'outer' | 'inner'): readonly Position[][] =>
    members.flatMap((member) =>
      isFields(member) &&
      member['type'] === 'way' &&
      (member['role'] === 'inner' ? 'inner' : 'outer') === role
        ? [positionsOf(member['geometry'])]
        : [],
    );
  const outers = joinedRings(lines('outer'));
  if (outers.length === 0) return null;
  const inners = joinedRings(lines('inner'));
  return {
    type: 'MultiPolygon',
    coordinates: outers.map((outer) => [
      outer,
      ...inners.filter(([first]) => first !== undefined && isInRing(first, outer)),
    ]),
  };
}

/** Lines put together end to end, either way round, until they close; what never closes is dropped. */
function joinedRings(lines: readonly Position[][]): readonly Position[][] {
  const open = lines.filter((line) => line.length > 1);
  const rings: Position[][] = [];
  for (let line = open.pop(); line !== undefined; line = open.pop()) {
    let ring = line;
    while (!sameEnds(ring.at(-1), ring[0])) {
      const end = ring.at(-1);
      const next = open.findIndex(
        (other) => sameEnds(other[0], end) || sameEnds(other.at(-1), end),
      );
      const [found] = next < 0 ? [] : open.splice(next, 1);
      if (found === undefined) break;
      const onward = sameEnds(found[0], end) ? found : found.toReversed();
      ring = [...ring, ...onward.slice(1)];
    }
    if (ring.length > 3 && sameEnds(ring.at(-1), ring[0])) rings.push(ring);
  }
  return rings;
}

const sameEnds = (first: Position | undefined, second: Position | undefined): boolean =>
  first?.[0] === second?.[0] && first?.[1] === second?.[1];

function isInRing([x, y]: Position, ring: readonly Position[]): boolean {
  let inside = false;
  for (const [index, [toX, toY]] of ring.entries()) {
    const [fromX, fromY] = ring.at(index - 1) ?? [toX, toY];
    if (fromY > y === toY > y) continue;
    if (x < fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX)) inside = !inside;
  }
  return inside;
}

const positionsOf = (corners: unknown): Position[] =>
  listOf(corners).flatMap((corner) => {
    const position = isFields(corner) ? positionOf(corner) : null;
    return position === null ? [] : [position];
  });

const positionOf = ({ lat, lon }: Fields): Position | null =>
  typeof lat === 'number' && typeof lon === 'number' ? [lon, lat] : null;

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
