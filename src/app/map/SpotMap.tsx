import 'leaflet/dist/leaflet.css';
import './map.css';
import type { ReactNode } from 'react';
import { MapLayers } from './MapLayers.tsx';
import type { SpotMapProps } from './spot-map-props.ts';
import { useLeafletMap } from './use-leaflet-map.ts';

export function SpotMap(props: SpotMapProps): ReactNode {
  const { map, mapNode } = useLeafletMap();
  return (
    <section
      className={props.adding ? 'spot-map adding' : 'spot-map'}
      aria-label="Map of the spots"
    >
      <div
        ref={mapNode}
        className="spot-map-view"
        role="group"
        aria-label={
          props.adding
            ? 'Map. Arrow keys pan, plus and minus zoom, Enter puts the spot at the cross'
            : 'Map. Arrow keys pan, plus and minus zoom'
        }
      />
      {map && <MapLayers map={map} {...props} />}
    </section>
  );
}
