import type { Map as LeafletMap, Point } from 'leaflet';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { MapSpot } from './map-spot.ts';
import { onMapNear } from './on-map-near.ts';

const WITHIN_PX = 14;

/** The spot that a picked point means: the nearest whose dot lies under the finger, or null. */
export const spotAt = (
  map: LeafletMap,
  spots: readonly MapSpot[],
  point: GeoPoint,
): MapSpot | null => {
  const onView = (at: GeoPoint): Point => map.latLngToContainerPoint(onMapNear(at, map));
  const picked = onView(point);
  const near = spots
    .map((spot) => ({ spot, px: onView(spot.point).distanceTo(picked) }))
    .filter(({ px }) => px <= WITHIN_PX)
    .toSorted((one, other) => one.px - other.px);
  return near[0]?.spot ?? null;
};
