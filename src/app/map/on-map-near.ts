import { LatLng } from 'leaflet';
import type { Map as LeafletMap } from 'leaflet';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { MERCATOR_LIMIT_DEG, nearestCopyDeg } from './map-place.ts';

/** Where a place is drawn: on the copy of the world nearest to the view, within the map's square. */
export const onMapNear = ({ latitudeDeg, longitudeDeg }: GeoPoint, map: LeafletMap): LatLng =>
  new LatLng(
    Math.min(MERCATOR_LIMIT_DEG, Math.max(-MERCATOR_LIMIT_DEG, latitudeDeg)),
    nearestCopyDeg(longitudeDeg, map.getCenter().lng),
  );
