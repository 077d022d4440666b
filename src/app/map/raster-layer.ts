import { TileLayer } from 'leaflet';
import type { Coords, DoneCallback } from 'leaflet';

/** No tile is waited for longer. */
export const TILE_WAIT_MS = 20_000;

/** Tiles of a server, each given up in time: a browser would wait for some of them for minutes. */
class RasterLayer extends TileLayer {
  override createTile(at: Coords, done: DoneCallback): HTMLElement {
    const tile = document.createElement('img');
    let settled = false;
    const settle = (problem?: Error): void => {
      if (settled) return;
      settled = true;
      clearTimeout(giveUp);
      done(problem, tile);
    };
    const giveUp = setTimeout(() => {
      settle(new Error('no answer in time'));
      tile.removeAttribute('src');
    }, TILE_WAIT_MS);
    tile.addEventListener('load', () => settle());
    // A page that says sorry in place of a picture ends here too.
    tile.addEventListener('error', () => settle(new Error('no picture')));
    tile.alt = '';
    tile.referrerPolicy = 'strict-origin-when-cross-origin';
    tile.src = this.getTileUrl(at);
    return tile;
  }
}

export const makeRasterLayer = (): TileLayer =>
  new RasterLayer('', { zIndex: 3, maxNativeZoom: 19 });

export const drawRasterLayer = (layer: TileLayer, url: string): void => void layer.setUrl(url);

/** Whether every placeholder of a tile address is one that a map can fill in. */
export const isTileAddress = (url: string): boolean => !/\{ *(?!(?:s|x|y|z|r) *\})/.test(url);
