import type { Layer, Map as LeafletMap } from 'leaflet';
import { useEffect, useState } from 'react';

/**
 * Keeps one layer on the map and draws it again when its data change. `make` and `draw` stand
 * outside the component, so that their identity is stable.
 */
export const useMapLayer = <Made extends Layer, Data>(
  map: LeafletMap,
  make: () => Made,
  draw: (layer: Made, data: Data) => void,
  data: Data,
): Made => {
  const [layer] = useState(make);
  useEffect(
    function addLayer() {
      layer.addTo(map);
      return function removeLayer() {
        layer.remove();
      };
    },
    [map, layer],
  );
  useEffect(
    function drawLayer() {
      draw(layer, data);
    },
    [layer, draw, data],
  );
  return layer;
};
