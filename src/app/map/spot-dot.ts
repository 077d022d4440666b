import { DivIcon, Marker } from 'leaflet';
import type { Map as LeafletMap } from 'leaflet';
import type { MapSpot } from './map-spot.ts';
import { onMapNear } from './on-map-near.ts';
import { selectOnClick } from './spot-hands.ts';

/** A spot among very many: a dot to choose it by, without ring, wedge and name. */
export class SpotDot {
  readonly button = document.createElement('button');
  private readonly map: LeafletMap;
  private readonly marker: Marker;
  private spot: MapSpot;

  constructor(map: LeafletMap, spot: MapSpot, onSelect: (id: string) => void) {
    this.map = map;
    this.spot = spot;
    this.button.type = 'button';
    this.button.className = 'spot-button dot-alone';
    this.button.ariaPressed = 'false';
    this.marker = new Marker(onMapNear(spot.point, map), {
      interactive: false,
      keyboard: false,
      icon: new DivIcon({ html: this.button, className: 'spot-icon', iconSize: [0, 0] }),
    });
    this.show(spot);
    this.marker.addTo(map);
    selectOnClick(this.button, () => onSelect(this.spot.id));
  }

  remove(): void {
    this.marker.remove();
  }

  show(spot: MapSpot): void {
    const moved = this.spot.point !== spot.point;
    this.spot = spot;
    if (this.button.title !== spot.name) this.button.ariaLabel = this.button.title = spot.name;
    if (moved) this.settle();
  }

  settle(): void {
    const at = onMapNear(this.spot.point, this.map);
    if (!at.equals(this.marker.getLatLng())) this.marker.setLatLng(at);
  }
}
