import type { Map as LeafletMap } from 'leaflet';
import { useEffect, useRef } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { boxOfPlaces } from './box-of-places.ts';

const CLOSEST_ZOOM = 16;
const NARROW_PX = 500;
const LEGEND_PX = 70;

/** Fits the view to the places once: when there are some and the map has a size. */
export const useFirstFit = (map: LeafletMap, places: readonly GeoPoint[]): void => {
  const fitted = useRef<LeafletMap | null>(null);
  useEffect(
    function fitOnce() {
      const fit = (): void => {
        if (fitted.current === map || map.getSize().x === 0 || places.length === 0) return;
        fitted.current = map;
        fitPlaces(map, places, false);
      };
      fit();
      map.on('resize', fit);
      return function stopFitting() {
        map.off('resize', fit);
      };
    },
    [map, places],
  );
};

export const fitPlaces = (map: LeafletMap, places: readonly GeoPoint[], animate: boolean): void => {
  const box = boxOfPlaces(places);
  if (!box) return;
  const size = map.getSize();
  const aside = Math.min(130, size.x / 7);
  const above = Math.min(130, size.y / 7);
  map.fitBounds(
    [
      [box.southDeg, box.westDeg],
      [box.northDeg, box.eastDeg],
    ],
    {
      paddingTopLeft: [aside, above],
      // On a narrow map the legend lies under the spots.
      paddingBottomRight: [aside, above + (size.x < NARROW_PX ? LEGEND_PX : 0)],
      maxZoom: CLOSEST_ZOOM,
      animate,
    },
  );
};
