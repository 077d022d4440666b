import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { useMemo } from 'react';
import { flatOutline } from './map-outline.ts';
import { MapButtons } from './MapButtons.tsx';
import { MapNotes } from './MapNotes.tsx';
import { drawNamesLayer, makeNamesLayer } from './names-layer.ts';
import { drawOutlineLayer, makeOutlineLayer } from './outline-layer.ts';
import { RasterTiles } from './RasterTiles.tsx';
import { drawSpotLayer, makeSpotLayer } from './spot-layer.ts';
import type { SpotMapProps } from './spot-map-props.ts';
import { useAddAt } from './use-add-at.ts';
import { useFirstFit } from './use-first-fit.ts';
import { useLoaded } from './use-loaded.ts';
import { useMapColours } from './use-map-colours.ts';
import { useMapLayer } from './use-map-layer.ts';
import { useOutline } from './use-outline.ts';

/** Everything that stands on the map and along its edges. */
export function MapLayers({
  map,
  spots,
  selectedId,
  ringRangeEv,
  tiles,
  adding,
  onSelect,
  onMove,
  onTurn,
  onAddAt,
  loadOutline,
  loadNames,
  fitTo,
  legend,
}: SpotMapProps & { readonly map: LeafletMap }): ReactNode {
  const colours = useMapColours();
  const outline = useOutline(map, loadOutline);
  const names = useLoaded(loadNames ? 'names' : null, async () => (await loadNames?.()) ?? null);

  const flat = useMemo(() => outline.value && flatOutline(outline.value), [outline.value]);
  const places = useMemo(
    () => (names.value ?? []).toSorted((one, other) => other.population - one.population),
    [names.value],
  );
  const look = useMemo(() => ({ outline: flat, colours }), [flat, colours]);
  const named = useMemo(
    () => ({ places, keepClear: spots.map(({ point }) => point) }),
    [places, spots],
  );
  const shown = useMemo(
    () => ({ spots, selectedId, ringRangeEv, onSelect, onMove, onTurn }),
    [spots, selectedId, ringRangeEv, onSelect, onMove, onTurn],
  );

  useFirstFit(map, fitTo);
  useMapLayer(map, makeOutlineLayer, drawOutlineLayer, look);
  useMapLayer(map, makeNamesLayer, drawNamesLayer, named);
  useMapLayer(map, makeSpotLayer, drawSpotLayer, shown);
  useAddAt(map, adding, onAddAt);

  const credits = [
    'Outline: Natural Earth, public domain',
    ...(places.length > 0 ? ['Names: GeoNames, CC BY 4.0'] : []),
    ...(tiles ? [tiles.attribution] : []),
  ];
  return (
    <>
      <MapButtons map={map} spots={spots} />
      {tiles && <RasterTiles key={tiles.url} map={map} url={tiles.url} />}
      <MapNotes
        map={map}
        outlineOnly={tiles === null}
        outlineFailed={outline.failed}
        credits={credits}
        legend={legend}
      />
    </>
  );
}
