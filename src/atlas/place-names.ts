import { groundVector } from '../core/place/geodesy.ts';
import type { GeoPoint } from '../core/place/geo-point.ts';
import { acosDeg, cosDeg } from '../core/units/angle.ts';
import type { ReadAtlasFile } from './atlas-file.ts';
import { decodePlaces } from './places-text.ts';
import type { Place } from './places-text.ts';

export type NearPlace = { readonly place: Place; readonly distanceM: number };

export type PlaceNames = {
  /** Places whose name begins with the text, marks and capitals ignored; most people first. */
  readonly search: (text: string, most: number) => readonly Place[];
  /** The nearest place, however far. */
  readonly nearest: (point: GeoPoint) => NearPlace | null;
};

/** Towns and villages of 1000 people and more. GeoNames, CC BY 4.0. */
export const loadPlaceNames = async (readFile: ReadAtlasFile): Promise<PlaceNames> =>
  placeNames(decodePlaces(await readFile('atlas/places.tsv')));

/** Places are taken in the order given: those with most people first. */
export const placeNames = (places: readonly Place[]): PlaceNames => {
  let foldedNames: readonly string[] | null = null;
  return {
    search: (text, most) => {
      const start = folded(text.trim());
      if (start === '') return [];
      foldedNames ??= places.map(({ name }) => folded(name));
      const found: Place[] = [];
      for (const [index, name] of foldedNames.entries()) {
        const place = places[index];
        if (place && name.startsWith(start)) found.push(place);
        if (found.length >= most) break;
      }
      return found;
    },
    nearest: (point) => {
      const place = nearestOf(places, point);
      return place && { place, distanceM: groundVector(point, place.point).distanceM };
    },
  };
};

/** On the sphere, which ranks neighbours as the ellipsoid does to within half a percent. */
const nearestOf = (places: readonly Place[], point: GeoPoint): Place | null => {
  const cosLatitude = cosDeg(point.latitudeDeg);
  let nearest: Place | null = null;
  let nearestDeg = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const northwardDeg = place.point.latitudeDeg - point.latitudeDeg;
    if (Math.abs(northwardDeg) >= nearestDeg) continue;
    const apart =
      versine(northwardDeg) +
      cosLatitude *
        cosDeg(place.point.latitudeDeg) *
        versine(place.point.longitudeDeg - point.longitudeDeg);
    const apartDeg = acosDeg(1 - apart);
    if (apartDeg >= nearestDeg) continue;
    nearestDeg = apartDeg;
    nearest = place;
  }
  return nearest;
};

const versine = (angleDeg: number): number => 1 - cosDeg(angleDeg);

const LETTERS: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
  '’': "'",
  '‘': "'",
  ʻ: "'",
};

const folded = (name: string): string =>
  name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøłđðþı’‘ʻ]/g, (letter) => LETTERS[letter] ?? letter);
