import { Circle, DivIcon, LayerGroup, Marker } from 'leaflet';
import type { Map as LeafletMap } from 'leaflet';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { onMapNear } from './on-map-near.ts';

export type MarkedPlace = {
  readonly point: GeoPoint;
  /** Drawn as a circle to scale; null for none. */
  readonly accuracyM: number | null;
};

class PositionLayer extends LayerGroup {
  show(place: MarkedPlace | null): void {
    this.clearLayers();
    const map = this._map as LeafletMap | undefined;
    if (place === null || map === undefined) return;
    const at = onMapNear(place.point, map);
    if (place.accuracyM !== null)
      this.addLayer(
        new Circle(at, { radius: place.accuracyM, className: 'accuracy', interactive: false }),
      );
    this.addLayer(
      new Marker(at, {
        interactive: false,
        keyboard: false,
        icon: new DivIcon({ className: 'place-mark', iconSize: [22, 22] }),
      }),
    );
  }
}

export const makePositionLayer = (): PositionLayer => new PositionLayer();

export const drawPositionLayer = (layer: PositionLayer, place: MarkedPlace | null): void =>
  layer.show(place);
