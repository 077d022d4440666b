import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { ElevationGrid } from '../../core/skyline/elevation-grid.ts';
import type { TileNumber } from '../../core/skyline/web-mercator.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { terrariumHeights } from '../../exchange/elevation/terrarium.ts';
import { tileMosaic, type HeightTile } from '../../exchange/elevation/tile-mosaic.ts';
import type { DecodePng } from './png-pixels.ts';

export type HeightPng = TileNumber & { readonly png: ArrayBuffer };

const SIDES_PX = [256, 512];

/** Height tiles as one grid a zoom and size. */
export async function* tileGrids(
  tiles: readonly HeightPng[],
  place: GeoPoint,
  decode: DecodePng,
): AsyncGenerator<number, Result<readonly ElevationGrid[], string>> {
  const decoded: HeightTile[] = [];
  for (const { png, ...number } of tiles) {
    const named = `Height tile ${number.zoom}/${number.x}/${number.y}`;
    const picture = await decode(png);
    if (!picture.ok) return fail(`${named}: ${picture.problem}.`);
    const { widthPx, heightPx, pixels } = picture.value;
    if (widthPx !== heightPx || !SIDES_PX.includes(widthPx))
      return fail(`${named}: expected 256 or 512 pixels a side, found ${widthPx} × ${heightPx}.`);
    decoded.push({ ...number, side: widthPx, heights: terrariumHeights(pixels) });
    yield decoded.length / tiles.length;
  }
  const grids: ElevationGrid[] = [];
  for (const kind of new Set(decoded.map(kindOf))) {
    const alike = decoded.filter((tile) => kindOf(tile) === kind);
    const mosaic = tileMosaic(alike, place, `height tiles of zoom ${kind}`);
    if (!mosaic.ok) return mosaic;
    grids.push(mosaic.value);
  }
  return ok(grids);
}

const kindOf = ({ zoom, side }: HeightTile): string => `${zoom}, ${side} px`;
