import type { LatLng, LeafletMouseEvent, Map as LeafletMap } from 'leaflet';
import { useEffect, useEffectEvent } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { placeFromMap } from './map-place.ts';

/** While picking: a click on the map, or Enter with the map in focus, gives a place. */
export const usePickedPoint = (
  map: LeafletMap,
  picking: boolean,
  onPick: (point: GeoPoint) => void,
): void => {
  const pick = useEffectEvent((at: LatLng) => onPick(placeFromMap(at)));
  useEffect(
    function listenWhilePicking() {
      if (!picking) return undefined;
      const node = map.getContainer();
      const click = (event: LeafletMouseEvent): void => pick(event.latlng);
      const key = (event: KeyboardEvent): void => {
        if (event.key === 'Enter' && event.target === node) pick(map.getCenter());
      };
      map.on('click', click);
      node.addEventListener('keydown', key);
      return function stopListening() {
        map.off('click', click);
        node.removeEventListener('keydown', key);
      };
    },
    [map, picking],
  );
};
