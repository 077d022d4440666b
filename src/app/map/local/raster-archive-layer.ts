import { GridLayer } from 'leaflet';
import type { Coords, DoneCallback } from 'leaflet';
import type { LocalMap } from './local-map.ts';

type RasterLayerProps = {
  readonly localMap: LocalMap;
  /** A tile that is there could not be read or drawn. */
  readonly onBroken: () => void;
};

/** Pictures out of an archive, drawn on canvas; where it holds no tile the ground shows through. */
class RasterArchiveLayer extends GridLayer {
  private readonly given: RasterLayerProps;

  constructor(given: RasterLayerProps) {
    const { minZoom, maxZoom } = given.localMap;
    super({ zIndex: 2, minZoom, maxNativeZoom: maxZoom, className: 'local-tiles' });
    this.given = given;
  }

  override createTile(tile: Coords, done: DoneCallback): HTMLElement {
    const canvas = document.createElement('canvas');
    void this.paint(canvas, tile).then(
      () => done(undefined, canvas),
      (problem: unknown) => {
        this.given.onBroken();
        done(problem instanceof Error ? problem : new Error('a tile is broken'), canvas);
      },
    );
    return canvas;
  }

  private async paint(canvas: HTMLCanvasElement, { x, y, z }: Coords): Promise<void> {
    const { archive, tileType } = this.given.localMap;
    const found = await archive.getZxy(z, x, y);
    if (found === undefined) return;
    const picture = await createImageBitmap(new Blob([found.data], { type: tileType }));
    canvas.width = picture.width;
    canvas.height = picture.height;
    canvas.getContext('2d')?.drawImage(picture, 0, 0);
    picture.close();
  }
}

export const makeRasterArchiveLayer = (given: RasterLayerProps): GridLayer =>
  new RasterArchiveLayer(given);
