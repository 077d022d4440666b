import type { Map as LeafletMap } from 'leaflet';
import type { MapSpot } from './map-spot.ts';
import { onMapNear } from './on-map-near.ts';

/** Up to so many spots each have their ring, wedge and name; more would cover each other. */
export const MOST_RINGS = 40;

export type SpotsShown = {
  /** Drawn whole; the nearest to the middle of the view first. */
  readonly whole: readonly MapSpot[];
  readonly dots: readonly MapSpot[];
  /** Too many are in view for each to be drawn whole. */
  readonly crowded: boolean;
};

/** Shares of the view by which its edges are moved out: rings reach in, and a short pan finds dots. */
const RINGS_BEYOND = 0.05;
const DOTS_BEYOND = 0.3;

/**
 * Few spots are always drawn whole, wherever they lie. Of many, only those in or near the view are
 * drawn, and whole only when few of them are; the chosen one always is.
 */
export const spotsShown = (
  map: LeafletMap,
  spots: readonly MapSpot[],
  selectedId: string | null,
): SpotsShown => {
  if (spots.length <= MOST_RINGS) return { whole: spots, dots: [], crowded: false };
  const view = map.getBounds();
  const [inner, outer] = [view.pad(RINGS_BEYOND), view.pad(DOTS_BEYOND)];
  const middle = map.getCenter();
  const near = spots
    .map((spot) => ({ spot, at: onMapNear(spot.point, map) }))
    .filter(({ spot, at }) => spot.id === selectedId || outer.contains(at))
    .map(({ spot, at }) => ({
      spot,
      inside: inner.contains(at),
      far: Math.hypot(at.lat - middle.lat, at.lng - middle.lng),
    }))
    .toSorted((one, other) => one.far - other.far);
  const crowded = near.filter(({ inside }) => inside).length > MOST_RINGS;
  const isWhole = ({ spot, inside }: (typeof near)[number]): boolean =>
    spot.id === selectedId || (inside && !crowded);
  return {
    whole: near.filter(isWhole).map(({ spot }) => spot),
    dots: near.filter((each) => !isWhole(each)).map(({ spot }) => spot),
    crowded,
  };
};
