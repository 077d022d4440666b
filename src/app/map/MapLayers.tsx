import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { Suspense, useMemo, useState } from 'react';
import { LazyLocalMapTiles } from './lazy-tools.ts';
import { flatOutline } from './map-outline.ts';
import { MapNotes } from './MapNotes.tsx';
import { MapTools } from './MapTools.tsx';
import { drawNamesLayer, makeNamesLayer } from './names-layer.ts';
import { drawOutlineLayer, makeOutlineLayer } from './outline-layer.ts';
import { RasterTiles } from './RasterTiles.tsx';
import { drawSpotLayer, makeSpotLayer } from './spot-layer.ts';
import type { SpotMapProps } from './spot-map-props.ts';
import { useFirstFit } from './use-first-fit.ts';
import { useLoaded } from './use-loaded.ts';
import { useMapColours } from './use-map-colours.ts';
import { useMapLayer } from './use-map-layer.ts';
import { useOutline } from './use-outline.ts';
import { usePickedPoint } from './use-picked-point.ts';

/** Everything that stands on the map and along its edges. */
export function MapLayers({
  map,
  spots,
  selectedId,
  ringRangeEv,
  tiles,
  localMap = null,
  adding,
  drawing = false,
  declinationAt,
  onSelect,
  onMove,
  onTurn,
  onAddAt,
  loadOutline,
  loadNames,
  fitTo,
  legend,
  children,
}: SpotMapProps & { readonly map: LeafletMap }): ReactNode {
  const [crowded, setCrowded] = useState(false);
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
    () => ({ spots, selectedId, ringRangeEv, onSelect, onMove, onTurn, onCrowded: setCrowded }),
    [spots, selectedId, ringRangeEv, onSelect, onMove, onTurn],
  );

  useFirstFit(map, fitTo);
  useMapLayer(map, makeOutlineLayer, drawOutlineLayer, look);
  useMapLayer(map, makeNamesLayer, drawNamesLayer, named);
  useMapLayer(map, makeSpotLayer, drawSpotLayer, shown);
  usePickedPoint(map, adding, onAddAt);

  const credits = [
    'Outline: Natural Earth, public domain',
    ...(places.length > 0 ? ['Names: GeoNames, CC BY 4.0'] : []),
    ...(localMap && localMap.attribution !== '' ? [localMap.attribution] : []),
    ...(tiles ? [tiles.attribution] : []),
  ];
  return (
    <>
      <MapTools
        map={map}
        spots={spots}
        busy={adding || drawing}
        declinationAt={declinationAt}
        onAddAt={onAddAt}
      />
      {children?.(map)}
      <Suspense>{localMap && <LazyLocalMapTiles map={map} localMap={localMap} />}</Suspense>
      {tiles && <RasterTiles key={tiles.url} map={map} url={tiles.url} />}
      <MapNotes
        map={map}
        tiled={tiles !== null}
        outlineOnly={tiles === null && localMap === null}
        crowded={crowded}
        outlineFailed={outline.failed}
        credits={credits}
        legend={legend}
      />
    </>
  );
}
