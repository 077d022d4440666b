import type { GeoPoint } from '../core/place/geo-point.ts';

/** A town or village. */
export type Place = {
  readonly name: string;
  /** ISO 3166-1, two letters. */
  readonly countryCode: string;
  readonly point: Required<GeoPoint>;
  readonly population: number;
  /** IANA time zone. */
  readonly zone: string;
};

const CREDIT = '# Place names: GeoNames (geonames.org), CC BY 4.0; shortened and rounded';

/**
 * Places as text: a line of credit, a line with the zones, then one line a place, most people
 * first: name, country, latitude and longitude in thousandths of a degree, elevation, population,
 * index of the zone.
 */
export const encodePlaces = (places: readonly Place[]): string => {
  const zones = [...new Set(places.map(({ zone }) => zone))].toSorted();
  const zoneIndex = new Map(zones.map((zone, index) => [zone, index]));
  const rows = places
    .toSorted((one, other) => other.population - one.population)
    .map(({ name, countryCode, point, population, zone }) =>
      [
        name,
        countryCode,
        Math.round(point.latitudeDeg * 1000),
        Math.round(point.longitudeDeg * 1000),
        point.elevationM,
        population,
        zoneIndex.get(zone),
      ].join('\t'),
    );
  return [CREDIT, zones.join('\t'), ...rows].join('\n');
};

/** Throws when the text is not what `encodePlaces` writes: the app's own file is broken then. */
export const decodePlaces = (text: string): readonly Place[] => {
  const [credit, zoneLine, ...rows] = text.split('\n');
  if (credit !== CREDIT || zoneLine === undefined)
    throw new Error(`The place names begin with ${credit?.slice(0, 40)}, expected ${CREDIT}`);
  const zones = zoneLine.split('\t');
  return rows.map((row) => decodePlace(row, zones));
};

const decodePlace = (row: string, zones: readonly string[]): Place => {
  const [name, countryCode, latitude, longitude, elevation, population, zoneIndex] =
    row.split('\t');
  const zone = zones[Number(zoneIndex)];
  if (name === undefined || countryCode === undefined || zone === undefined)
    throw new Error(
      `A line of the place names reads “${row.slice(0, 60)}”, expected seven columns`,
    );
  return {
    name,
    countryCode,
    point: {
      latitudeDeg: Number(latitude) / 1000,
      longitudeDeg: Number(longitude) / 1000,
      elevationM: Number(elevation),
    },
    population: Number(population),
    zone,
  };
};
