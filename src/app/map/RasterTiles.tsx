import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { drawRasterLayer, isTileAddress, makeRasterLayer } from './raster-layer.ts';
import { useMapLayer } from './use-map-layer.ts';
import { tileAnswersText, useTileAnswers } from './use-tile-answers.ts';

type RasterTilesProps = { readonly map: LeafletMap; readonly url: string };

/** Tiles over the outline; where they do not come, the outline is seen through them. */
export function RasterTiles({ map, url }: RasterTilesProps): ReactNode {
  return isTileAddress(url) ? (
    <AddressedTiles map={map} url={url} />
  ) : (
    <TilesNote text="map tiles did not answer" />
  );
}

function AddressedTiles({ map, url }: RasterTilesProps): ReactNode {
  const layer = useMapLayer(map, makeRasterLayer, drawRasterLayer, url);
  const text = tileAnswersText(useTileAnswers(layer));
  return text === null ? null : <TilesNote text={text} />;
}

function TilesNote({ text }: { readonly text: string }): ReactNode {
  return (
    <p className="map-note tiles-note" role="status">
      {text}
    </p>
  );
}
