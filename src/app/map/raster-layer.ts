import { TileLayer } from 'leaflet';

export const makeRasterLayer = (): TileLayer => new TileLayer('', { zIndex: 3, maxNativeZoom: 19 });

export const drawRasterLayer = (layer: TileLayer, url: string): void => void layer.setUrl(url);

/** Whether every placeholder of a tile address is one that a map can fill in. */
export const isTileAddress = (url: string): boolean => !/\{ *(?!(?:s|x|y|z|r) *\})/.test(url);
