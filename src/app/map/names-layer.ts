import { DomUtil, Layer } from 'leaflet';
import type { Map as LeafletMap, Point } from 'leaflet';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { PixelBox } from './free-boxes.ts';
import { freeBoxes } from './free-boxes.ts';
import { nearestCopyDeg } from './map-place.ts';

export type NamedPlace = {
  readonly name: string;
  readonly point: GeoPoint;
  readonly population: number;
};

export type NamesData = {
  /** The most populous first. */
  readonly places: readonly NamedPlace[];
  /** Places that names keep clear of. */
  readonly keepClear: readonly GeoPoint[];
};

const MOST_NAMES = 80;

/** Smallest population named, by zoom from 0; closer in, every place is. */
const SMALLEST_BY_ZOOM = [8e6, 8e6, 4e6, 2e6, 1e6, 5e5, 2e5, 1e5, 4e4, 15_000, 6000, 2500, 1000];

class NamesLayer extends Layer {
  private readonly sheet = document.createElement('div');
  private data: NamesData = { places: [], keepClear: [] };

  override onAdd(map: LeafletMap): this {
    this.sheet.className = 'place-names';
    this.sheet.ariaHidden = 'true';
    map.getPane('overlayPane')?.append(this.sheet);
    this.place();
    return this;
  }

  override onRemove(): this {
    this.sheet.remove();
    return this;
  }

  override getEvents(): Record<string, () => void> {
    return { moveend: () => this.place(), zoomstart: () => this.sheet.replaceChildren() };
  }

  show(data: NamesData): void {
    this.data = data;
    this.place();
  }

  private place(): void {
    const map = this._map as LeafletMap | undefined;
    if (!map) return;
    const smallest = SMALLEST_BY_ZOOM[map.getZoom()] ?? 0;
    const bounds = map.getBounds().pad(0.1);
    const centreDeg = map.getCenter().lng;
    const layerPoint = ({ latitudeDeg, longitudeDeg }: GeoPoint): Point =>
      map.latLngToLayerPoint([latitudeDeg, nearestCopyDeg(longitudeDeg, centreDeg)]);

    const inView: { readonly name: string; readonly at: Point }[] = [];
    for (const { name, point, population } of this.data.places) {
      if (population < smallest || inView.length >= MOST_NAMES) break;
      if (bounds.contains([point.latitudeDeg, nearestCopyDeg(point.longitudeDeg, centreDeg)]))
        inView.push({ name, at: layerPoint(point) });
    }
    const free = freeBoxes(
      inView.map(({ name, at }) => [nameBox(at, name)]),
      this.data.keepClear.map((point) => spotBox(layerPoint(point))),
    );
    this.sheet.replaceChildren(
      ...inView
        .filter((_, index) => free[index] === 0)
        .map(({ name, at }) => nameElement(name, at)),
    );
  }
}

export const makeNamesLayer = (): NamesLayer => new NamesLayer();

export const drawNamesLayer = (layer: NamesLayer, data: NamesData): void => layer.show(data);

const nameElement = (name: string, at: Point): HTMLElement => {
  const made = document.createElement('span');
  made.textContent = name;
  DomUtil.setPosition(made, at);
  return made;
};

/** About the width of 12 px text, with room around it. */
const nameBox = ({ x, y }: Point, name: string): PixelBox => ({
  left: x - 10,
  top: y - 12,
  right: x + 14 + name.length * 6.8,
  bottom: y + 12,
});

const spotBox = ({ x, y }: Point): PixelBox => ({
  left: x - 64,
  top: y - 64,
  right: x + 64,
  bottom: y + 84,
});
