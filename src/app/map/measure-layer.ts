import { CircleMarker, LayerGroup, Polyline } from 'leaflet';
import type { LatLngTuple, Map as LeafletMap } from 'leaflet';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { groundLine } from './ground-line.ts';
import { nearestCopyDeg } from './map-place.ts';

class MeasureLayer extends LayerGroup {
  /** None, the first or both ends. */
  show([from, to]: readonly GeoPoint[]): void {
    this.clearLayers();
    const map = this._map as LeafletMap | undefined;
    if (from === undefined || map === undefined) return;
    const start = {
      ...from,
      longitudeDeg: nearestCopyDeg(from.longitudeDeg, map.getCenter().lng),
    };
    const line = to === undefined ? [start] : groundLine(start, to);
    if (to !== undefined)
      this.addLayer(
        new Polyline(line.map(onMap), { className: 'measure-line', interactive: false }),
      );
    for (const end of to === undefined ? [start] : [start, line.at(-1) ?? to])
      this.addLayer(
        new CircleMarker(onMap(end), { className: 'measure-end', radius: 4, interactive: false }),
      );
  }
}

export const makeMeasureLayer = (): MeasureLayer => new MeasureLayer();

export const drawMeasureLayer = (layer: MeasureLayer, ends: readonly GeoPoint[]): void =>
  layer.show(ends);

const onMap = ({ latitudeDeg, longitudeDeg }: GeoPoint): LatLngTuple => [latitudeDeg, longitudeDeg];
