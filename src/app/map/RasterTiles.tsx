import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { useEffect, useState } from 'react';
import { drawRasterLayer, isTileAddress, makeRasterLayer } from './raster-layer.ts';
import { useMapLayer } from './use-map-layer.ts';

type RasterTilesProps = { readonly map: LeafletMap; readonly url: string };

/** Tiles over the outline; where they do not come, the outline is seen through them. */
export function RasterTiles({ map, url }: RasterTilesProps): ReactNode {
  return isTileAddress(url) ? <AddressedTiles map={map} url={url} /> : <NoAnswer />;
}

function AddressedTiles({ map, url }: RasterTilesProps): ReactNode {
  const layer = useMapLayer(map, makeRasterLayer, drawRasterLayer, url);
  const [failing, setFailing] = useState(false);
  useEffect(
    function watchAnswers() {
      const fail = (): void => setFailing(true);
      const succeed = (): void => setFailing(false);
      layer.on({ tileerror: fail, tileload: succeed });
      return function stopWatching() {
        layer.off({ tileerror: fail, tileload: succeed });
      };
    },
    [layer],
  );
  return failing && <NoAnswer />;
}

function NoAnswer(): ReactNode {
  return (
    <p className="map-note tiles-note" role="status">
      map tiles did not answer
    </p>
  );
}
