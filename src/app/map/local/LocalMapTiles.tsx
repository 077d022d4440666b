import type { Layer, Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { useEffect, useState } from 'react';
import { useMapColours } from '../use-map-colours.ts';
import { makeLocalMapLayer } from './local-map-layer.ts';
import type { LocalMap } from './local-map.ts';

type LocalMapTilesProps = { readonly map: LeafletMap; readonly localMap: LocalMap };

/** A map archive of this device, between the outline and what comes from the network. */
export function LocalMapTiles({ map, localMap }: LocalMapTilesProps): ReactNode {
  const colours = useMapColours();
  const [broken, setBroken] = useState(false);
  useEffect(
    function addLocalMap() {
      let wanted = true;
      let layer: Layer | null = null;
      const onBroken = (): void => {
        if (wanted) setBroken(true);
      };
      void makeLocalMapLayer({ localMap, colours, onBroken }).then((made) => {
        if (wanted) layer = made.addTo(map);
      }, onBroken);
      return function removeLocalMap() {
        wanted = false;
        layer?.remove();
        setBroken(false);
      };
    },
    [map, localMap, colours],
  );
  return (
    broken && (
      <p className="map-note tiles-note" role="status">
        parts of the local map could not be read
      </p>
    )
  );
}
