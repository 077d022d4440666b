import type { Layer } from 'leaflet';
import type { MapColours } from '../map-colours.ts';
import type { LocalMap } from './local-map.ts';
import { makeRasterArchiveLayer } from './raster-archive-layer.ts';
import { labelRulesFor, paintRulesFor } from './vector-style.ts';

type LocalLayerProps = {
  readonly localMap: LocalMap;
  readonly colours: MapColours;
  /** A tile that is there could not be read. */
  readonly onBroken: () => void;
};

/** The layer that draws an archive over the outline and under tiles of the network. */
export const makeLocalMapLayer = async (given: LocalLayerProps): Promise<Layer> =>
  given.localMap.tileType === 'vector' ? vectorLayer(given) : makeRasterArchiveLayer(given);

const vectorLayer = async ({ localMap, colours, onBroken }: LocalLayerProps): Promise<Layer> => {
  const { minZoom, maxZoom, archive } = localMap;
  const drawing = await import('protomaps-leaflet');
  const url = {
    getZxy: (...zxy: Parameters<typeof archive.getZxy>) =>
      archive.getZxy(...zxy).catch((problem: unknown) => {
        if (!(problem instanceof DOMException && problem.name === 'AbortError')) onBroken();
        return undefined;
      }),
  };
  return drawing.leafletLayer({
    url,
    minZoom,
    maxDataZoom: maxZoom,
    paintRules: paintRulesFor(colours, drawing),
    labelRules: labelRulesFor(colours, drawing),
    attribution: '',
    lang: '',
    zIndex: 2,
    className: 'local-tiles',
  } as Parameters<typeof drawing.leafletLayer>[0]) as unknown as Layer;
};
