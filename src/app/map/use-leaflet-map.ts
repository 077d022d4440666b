import type { Map as LeafletMap } from 'leaflet';
import { useCallback, useState } from 'react';
import { makeMap } from './make-map.ts';

/** Makes the map when its node appears, keeps its size, and takes it away with the node. */
export const useLeafletMap = (): {
  readonly map: LeafletMap | null;
  readonly mapNode: (node: HTMLDivElement) => () => void;
} => {
  const [map, setMap] = useState<LeafletMap | null>(null);
  const mapNode = useCallback((node: HTMLDivElement) => {
    const made = makeMap(node);
    const size = new ResizeObserver(() => made.invalidateSize({ pan: false }));
    size.observe(node);
    setMap(made);
    return function removeMap() {
      size.disconnect();
      made.remove();
      endZoom(made);
      setMap(null);
    };
  }, []);
  return { map, mapNode };
};

/** A zoom still under way sets a timer that Leaflet 1.9 does not clear when the map is removed. */
const endZoom = (map: LeafletMap): void => void Object.assign(map, { _animatingZoom: false });
