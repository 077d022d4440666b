import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { useCallback, useSyncExternalStore } from 'react';
import { metresPerPixel } from './ground-resolution.ts';
import { scaleBar } from './scale-bar.ts';

const MOST_PX = 120;

/** A length on the ground at the latitude of the map's centre, and where north is. */
export function ScaleBar({ map }: { readonly map: LeafletMap }): ReactNode {
  const { text, widthPx } = scaleBar({ metresPerPixel: useCentreScale(map), mostPx: MOST_PX });
  return (
    <div className="map-scale">
      <svg className="north" viewBox="0 0 14 30" width="14" height="30" role="img">
        <title>North is up</title>
        <path d="M7 30V14" stroke="currentColor" strokeWidth="1.5" />
        <path d="M2.5 11V1l9 10V1" fill="none" stroke="currentColor" strokeWidth="1.75" />
      </svg>
      <span className="scale-bar" style={{ width: `${widthPx}px` }} data-figure="map-scale">
        {text}
      </span>
    </div>
  );
}

/** To four digits: a pan within a town changes nothing and draws nothing. */
const useCentreScale = (map: LeafletMap): number => {
  const subscribe = useCallback(
    (changed: () => void) => {
      map.on('move zoomend resize', changed);
      return () => void map.off('move zoomend resize', changed);
    },
    [map],
  );
  return useSyncExternalStore(subscribe, () =>
    Number(
      metresPerPixel({ latitudeDeg: map.getCenter().lat, zoom: map.getZoom() }).toPrecision(4),
    ),
  );
};
