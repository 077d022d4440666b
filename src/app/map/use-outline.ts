import type { Map as LeafletMap } from 'leaflet';
import type { MapOutline, OutlineDetail } from './map-outline.ts';
import type { Loaded } from './use-loaded.ts';
import { useLoaded } from './use-loaded.ts';
import { useMapZoom } from './use-map-zoom.ts';

/** From here the 1 : 50 million outline looks angular. */
const FINE_FROM_ZOOM = 6;

/** The coarse outline first, the finer one once the view has come close. */
export const useOutline = (
  map: LeafletMap,
  load: (detail: OutlineDetail) => Promise<MapOutline | null>,
): Loaded<MapOutline> => {
  const close = useMapZoom(map) >= FINE_FROM_ZOOM;
  const coarse = useLoaded<OutlineDetail, MapOutline>('50m', load);
  const settled = coarse.value !== null || coarse.failed;
  const fine = useLoaded<OutlineDetail, MapOutline>(close && settled ? '10m' : null, load);
  return fine.value ? fine : coarse;
};
