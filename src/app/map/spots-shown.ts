import type { Map as LeafletMap } from 'leaflet';
import type { MapSpot } from './map-spot.ts';
import { onMapNear } from './on-map-near.ts';

/** Up to so many spots each have their ring, wedge and name; more would cover each other. */
export const MOST_RINGS = 40;

export type SpotsShown = {
  /** Drawn whole; the nearest to the middle of the view first. */
  readonly whole: readonly MapSpot[];
  readonly dots: readonly MapSpot[];
};

/** Share of the view that is drawn beyond each of its edges, so that a short pan finds it there. */
const BEYOND = 0.3;

/**
 * Few spots are always drawn whole, wherever they lie. Of many, only those in or near the view are
 * drawn, and whole only when few of them are; the chosen one always is.
 */
export const spotsShown = (
  map: LeafletMap,
  spots: readonly MapSpot[],
  selectedId: string | null,
): SpotsShown => {
  if (spots.length <= MOST_RINGS) return { whole: spots, dots: [] };
  const near = map.getBounds().pad(BEYOND);
  const middle = map.getCenter();
  const inView = spots
    .map((spot) => ({ spot, at: onMapNear(spot.point, map) }))
    .filter(({ spot, at }) => spot.id === selectedId || near.contains(at))
    .map(({ spot, at }) => ({ spot, far: Math.hypot(at.lat - middle.lat, at.lng - middle.lng) }))
    .toSorted((one, other) => one.far - other.far)
    .map(({ spot }) => spot);
  return inView.length <= MOST_RINGS
    ? { whole: inView, dots: [] }
    : {
        whole: inView.filter(({ id }) => id === selectedId),
        dots: inView.filter(({ id }) => id !== selectedId),
      };
};
