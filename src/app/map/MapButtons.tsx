import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { MapSign } from './MapSign.tsx';
import type { MapSpot } from './map-spot.ts';
import { fitPlaces } from './use-first-fit.ts';
import { useMapZoom } from './use-map-zoom.ts';

type MapButtonsProps = {
  readonly map: LeafletMap;
  readonly spots: readonly MapSpot[];
  /** Further buttons, below these. */
  readonly children?: ReactNode;
};

export function MapButtons({ map, spots, children }: MapButtonsProps): ReactNode {
  const zoom = useMapZoom(map);
  const showAll = (): void =>
    fitPlaces(
      map,
      spots.map(({ point }) => point),
      true,
    );
  return (
    <div className="map-buttons">
      <button
        type="button"
        aria-label="Zoom in"
        disabled={zoom >= map.getMaxZoom()}
        onClick={() => map.zoomIn()}
      >
        <MapSign path="M3 9h12M9 3v12" />
      </button>
      <button
        type="button"
        aria-label="Zoom out"
        disabled={zoom <= map.getMinZoom()}
        onClick={() => map.zoomOut()}
      >
        <MapSign path="M3 9h12" />
      </button>
      <button
        type="button"
        aria-label="Show all spots"
        title="Show all spots"
        disabled={spots.length === 0}
        onClick={showAll}
      >
        <MapSign path="M2 6V2h4M12 2h4v4M16 12v4h-4M6 16H2v-4" />
      </button>
      {children}
    </div>
  );
}
