import type { Map as LeafletMap } from 'leaflet';
import { useCallback, useSyncExternalStore } from 'react';

/** The zoom, read again only when a zoom has ended. */
export const useMapZoom = (map: LeafletMap): number => {
  const subscribe = useCallback(
    (changed: () => void) => {
      map.on('zoomend', changed);
      return () => void map.off('zoomend', changed);
    },
    [map],
  );
  return useSyncExternalStore(subscribe, () => map.getZoom());
};
