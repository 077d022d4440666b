import { GridLayer } from 'leaflet';
import type { Coords } from 'leaflet';
import type { OutlineLook } from './draw-outline-tile.ts';
import { drawOutlineTile } from './draw-outline-tile.ts';

class OutlineLayer extends GridLayer {
  look: OutlineLook | null = null;

  override createTile(tile: Coords): HTMLElement {
    const canvas = document.createElement('canvas');
    const size = this.getTileSize();
    const density = Math.min(2, window.devicePixelRatio || 1);
    canvas.width = size.x * density;
    canvas.height = size.y * density;
    const context = canvas.getContext('2d');
    if (context && this.look) {
      context.scale(density, density);
      drawOutlineTile(context, tile, this.look);
    }
    return canvas;
  }
}

export const makeOutlineLayer = (): OutlineLayer =>
  new OutlineLayer({ zIndex: 1, className: 'outline-tiles', updateWhenZooming: false });

export const drawOutlineLayer = (layer: OutlineLayer, look: OutlineLook): void => {
  layer.look = look;
  layer.redraw();
};
