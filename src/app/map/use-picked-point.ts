import type { LatLng, LeafletMouseEvent, Map as LeafletMap } from 'leaflet';
import { useEffect, useEffectEvent } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { placeFromMap } from './map-place.ts';

/** While adding: a click on the map, or Enter with the map in focus, gives a place. */
export const useAddAt = (
  map: LeafletMap,
  adding: boolean,
  onAddAt: (point: GeoPoint) => void,
): void => {
  const addAt = useEffectEvent((at: LatLng) => onAddAt(placeFromMap(at)));
  useEffect(
    function listenWhileAdding() {
      if (!adding) return undefined;
      const node = map.getContainer();
      const click = (event: LeafletMouseEvent): void => addAt(event.latlng);
      const key = (event: KeyboardEvent): void => {
        if (event.key === 'Enter' && event.target === node) addAt(map.getCenter());
      };
      map.on('click', click);
      node.addEventListener('keydown', key);
      return function stopListening() {
        map.off('click', click);
        node.removeEventListener('keydown', key);
      };
    },
    [map, adding],
  );
};
