import { Map as LeafletMap } from 'leaflet';
import { MERCATOR_LIMIT_DEG } from './map-place.ts';

/** A map of the whole world in the node; every button, length and credit on it is drawn by the app. */
export const makeMap = (node: HTMLElement): LeafletMap => {
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  const map = new LeafletMap(node, {
    attributionControl: false,
    zoomControl: false,
    minZoom: 1,
    maxZoom: 20,
    maxBounds: [
      [-MERCATOR_LIMIT_DEG, -36_000],
      [MERCATOR_LIMIT_DEG, 36_000],
    ],
    maxBoundsViscosity: 1,
    fadeAnimation: false,
    zoomAnimation: !still,
    markerZoomAnimation: !still,
    inertia: !still,
  });
  return map.setView([25, 0], 2);
};
