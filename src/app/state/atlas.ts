import type { Declination } from '../../atlas/declination.ts';
import { loadOutline, type Outline, type OutlineDetail } from '../../atlas/outline.ts';
import type { NearPlace, PlaceNames } from '../../atlas/place-names.ts';
import type { ZoneAt } from '../../atlas/zone-at.ts';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { Result } from '../../core/units/result.ts';
import { useServices, type Services } from './services.ts';

/** What is known of a place without asking any network but the app's own files. */
export type Surroundings = { readonly zone: ZoneAt; readonly near: NearPlace | null };

export type Atlas = {
  readonly outline: (detail: OutlineDetail) => Promise<Outline>;
  /** Fetched when first asked for. */
  readonly places: () => Promise<PlaceNames>;
  readonly surroundings: (point: GeoPoint) => Promise<Surroundings>;
  /** Magnetic, on a civil date; in a sentence why there is none. */
  readonly declination: (point: GeoPoint, date: string) => Promise<Result<Declination, string>>;
};

const atlases = new WeakMap<Services, Atlas>();

/** One atlas for the page, whichever screen asks first. */
export function useAtlas(): Atlas {
  const services = useServices();
  const atlas = atlases.get(services) ?? atlasOf(services);
  atlases.set(services, atlas);
  return atlas;
}

function atlasOf({ ownFile }: Services): Atlas {
  const readFile = kept(async (path: string) => {
    const response = await ownFile(path);
    if (!response.ok) throw new Error(`${path} of the app is missing (answer ${response.status})`);
    return response.text();
  });
  const loadPlaces = kept(async () => {
    const { loadPlaceNames } = await import('../../atlas/place-names.ts');
    return loadPlaceNames(readFile);
  });
  const places = (): Promise<PlaceNames> => loadPlaces('all');
  const findZone = kept(async () => {
    const { zoneFinder } = await import('../../atlas/zone-at.ts');
    return zoneFinder(readFile);
  });
  return {
    outline: (detail) => loadOutline(readFile, detail),
    places,
    surroundings: async (point) => {
      const [names, zoneAt] = await Promise.all([places(), findZone('all')]);
      return { zone: await zoneAt(point), near: names.nearest(point) };
    },
    declination: async (point, date) => {
      const { declinationAt } = await import('../../atlas/declination.ts');
      return declinationAt(point, date);
    },
  };
}

/** Asked once for each name; what failed is asked again. */
function kept<Name extends string, Value>(
  load: (name: Name) => Promise<Value>,
): (name: Name) => Promise<Value> {
  const loaded = new Map<Name, Promise<Value>>();
  return (name) => {
    const value =
      loaded.get(name) ??
      load(name).catch((problem: unknown) => {
        loaded.delete(name);
        throw problem;
      });
    loaded.set(name, value);
    return value;
  };
}
