import type { LeafletMouseEvent, Map as LeafletMap } from 'leaflet';
import { useEffect, useState } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { placeFromMap } from './map-place.ts';

/** While watching: where the pointer stands, or the cross when the map is worked by keys. */
export const usePointAhead = (map: LeafletMap, watching: boolean): GeoPoint | null => {
  const [ahead, setAhead] = useState<GeoPoint | null>(null);
  useEffect(
    function followPointer() {
      if (!watching) return undefined;
      const node = map.getContainer();
      const point = (event: LeafletMouseEvent): void => setAhead(placeFromMap(event.latlng));
      const cross = (): void => {
        if (node.matches(':focus-visible')) setAhead(placeFromMap(map.getCenter()));
      };
      map.on('mousemove', point);
      map.on('move', cross);
      return function stopFollowing() {
        map.off('mousemove', point);
        map.off('move', cross);
        setAhead(null);
      };
    },
    [map, watching],
  );
  return ahead;
};
