import type { MultiLineString, MultiPolygon, Position } from 'geojson';
import { feature, mesh } from 'topojson-client';
import type { GeometryCollection, Topology } from 'topojson-specification';
import type { ReadAtlasFile } from './atlas-file.ts';

/** Coastlines and borders, positions as [longitude, latitude] in degrees. */
export type Outline = { readonly land: MultiPolygon; readonly borders: MultiLineString };

/** '50m' for the world, '10m' for a region: scales of 1 : 50 and 1 : 10 million. */
export type OutlineDetail = '50m' | '10m';

/** Natural Earth, public domain: a backdrop, coarse at the scale of a town. */
export const loadOutline = async (
  readFile: ReadAtlasFile,
  detail: OutlineDetail,
): Promise<Outline> => decodeOutline(JSON.parse(await readFile(`atlas/outline-${detail}.json`)));

type WorldTopology = Topology<{
  readonly land: GeometryCollection;
  readonly countries: GeometryCollection;
}>;

const decodeOutline = (topology: WorldTopology): Outline => ({
  land: {
    type: 'MultiPolygon',
    coordinates: feature(topology, topology.objects.land).features.flatMap(
      ({ geometry }): Position[][][] => {
        if (geometry.type === 'Polygon') return [geometry.coordinates];
        return geometry.type === 'MultiPolygon' ? geometry.coordinates : [];
      },
    ),
  },
  borders: mesh(topology, topology.objects.countries, (one, other) => one !== other),
});
