import { DivIcon, Marker, Point } from 'leaflet';
import type { LatLng, Map as LeafletMap } from 'leaflet';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { PixelBox } from './free-boxes.ts';
import { metresPerPixel } from './ground-resolution.ts';
import type { MapSpot } from './map-spot.ts';
import { onMapNear } from './on-map-near.ts';
import type { EvRange } from './ring-tone.ts';
import type { FigureSize, SpotFigure } from './spot-figure.ts';
import { makeSpotFigure, paintFraming, paintName, paintRing } from './spot-figure.ts';
import { wedge } from './wedge.ts';

export type SpotLook = {
  readonly spot: MapSpot;
  readonly selected: boolean;
  readonly ringRangeEv: EvRange;
};

const SIZES = {
  wide: { plain: { ringPx: 34, edgePx: 92 }, selected: { ringPx: 60, edgePx: 185 } },
  narrow: { plain: { ringPx: 29, edgePx: 74 }, selected: { ringPx: 46, edgePx: 128 } },
} as const;

const NARROW_BELOW_PX = 600;

/** Room for the handle, a name and what stands along the lower edge. */
const MARGIN_PX = { left: 30, top: 40, right: 30, bottom: 120 } as const;

const nameTopPx = {
  below: ({ ringPx }: FigureSize): number => ringPx + 5,
  above: ({ ringPx }: FigureSize, height: number): number => -ringPx - 5 - height,
} as const;

/** One spot on one map: what is drawn, and what a hand on it has changed but not yet let go. */
export class SpotView {
  readonly map: LeafletMap;
  readonly figure: SpotFigure = makeSpotFigure();
  look: SpotLook;
  point: GeoPoint;
  bearingDeg: number;
  /** While something is held by pointer or key, new props wait. */
  held = false;
  private readonly marker: Marker;
  private paintedRing: readonly number[] | null | undefined;
  private paintedRange: EvRange | undefined;
  private paintedFraming = '';
  /** Measured once for each name and size of letters: to measure makes the page lay itself out. */
  private nameSize: { readonly width: number; readonly height: number } | null = null;

  constructor(map: LeafletMap, look: SpotLook) {
    this.map = map;
    this.look = look;
    this.point = look.spot.point;
    this.bearingDeg = look.spot.bearingDeg;
    this.marker = new Marker([0, 0], {
      interactive: false,
      keyboard: false,
      icon: new DivIcon({ html: this.figure.root, className: 'spot-icon', iconSize: [0, 0] }),
    });
    this.show(look);
    this.marker.addTo(map);
  }

  remove(): void {
    this.marker.remove();
  }

  show(look: SpotLook): void {
    const { spot, selected, ringRangeEv } = look;
    if (this.paintedRing !== undefined && sameLook(this.look, look)) return;
    if (this.look.spot.name !== spot.name || this.look.selected !== selected) this.nameSize = null;
    this.look = look;
    if (this.paintedRing !== spot.ringEv || this.paintedRange !== ringRangeEv)
      paintRing(this.figure, spot.ringEv, ringRangeEv);
    this.paintedRing = spot.ringEv;
    this.paintedRange = ringRangeEv;
    paintName(this.figure, spot.name, selected);
    this.marker.setZIndexOffset(selected ? 100_000 : 0);
    if (!this.held) this.takeFromLook();
  }

  /** Back to what the app says, after a drag that was given up. */
  takeFromLook(): void {
    this.point = this.look.spot.point;
    this.bearingDeg = this.look.spot.bearingDeg;
    this.settle();
  }

  moveTo(point: GeoPoint): void {
    this.point = point;
    const at = this.onMap();
    if (!at.equals(this.marker.getLatLng(), 0)) this.marker.setLatLng(at);
  }

  turnTo(bearingDeg: number): void {
    this.bearingDeg = bearingDeg;
    this.paint();
  }

  /** After the view has moved: stand at the copy nearest to it, and draw to its scale. */
  settle(): void {
    this.nameSize = null;
    this.moveTo(this.point);
    this.paint();
  }

  onMap(): LatLng {
    return onMapNear(this.point, this.map);
  }

  /** On the map's own pixels: where the name may stand, below the ring or above it. */
  nameBoxes(): readonly PixelBox[] {
    const { x, y } = this.map.latLngToLayerPoint(this.onMap());
    const { width, height } = this.nameBox();
    return [nameTopPx.below(this.size()), nameTopPx.above(this.size(), height)].map((offset) => ({
      left: x - width / 2,
      right: x + width / 2,
      top: y + offset,
      bottom: y + offset + height,
    }));
  }

  private nameBox(): { readonly width: number; readonly height: number } {
    if (this.nameSize === null) {
      const { offsetWidth: width, offsetHeight: height } = this.figure.name;
      this.nameSize = { width, height };
    }
    return this.nameSize;
  }

  /** The square inside the ring: a name may touch its corners. */
  ringBox(): PixelBox {
    const { x, y } = this.map.latLngToLayerPoint(this.onMap());
    const half = this.size().ringPx * 0.8;
    return { left: x - half, right: x + half, top: y - half, bottom: y + half };
  }

  /** 0 below the ring, 1 above it, −1 nowhere; the selected name always stands. */
  placeName(choice: number): void {
    const { name } = this.figure;
    name.classList.toggle('covered', choice < 0 && !this.look.selected);
    const top =
      choice === 1
        ? nameTopPx.above(this.size(), this.nameBox().height)
        : nameTopPx.below(this.size());
    name.style.top = `${top}px`;
  }

  /** Moves the map no farther than needed to show the spot and the handle on its wedge. */
  reveal({ gliding }: { readonly gliding: boolean }): void {
    const spot = this.map.latLngToContainerPoint(this.onMap());
    const { x, y } = wedge({ ...this.framing(), edgePx: this.size().edgePx }).handle;
    const size = this.map.getSize();
    const shift = new Point(
      shiftInto(spot.x, spot.x + x, MARGIN_PX.left, size.x - MARGIN_PX.right),
      shiftInto(spot.y, spot.y + y, MARGIN_PX.top, size.y - MARGIN_PX.bottom),
    );
    const animate = gliding && this.map.options.zoomAnimation === true;
    if (shift.x !== 0 || shift.y !== 0) this.map.panBy(shift, { animate });
  }

  private framing(): Pick<MapSpot, 'bearingDeg' | 'horizontalFovDeg'> {
    return { bearingDeg: this.bearingDeg, horizontalFovDeg: this.look.spot.horizontalFovDeg };
  }

  private size(): FigureSize {
    const sizes = this.map.getSize().x < NARROW_BELOW_PX ? SIZES.narrow : SIZES.wide;
    return this.look.selected ? sizes.selected : sizes.plain;
  }

  private paint(): void {
    const { cameraDistanceM = 0 } = this.look.spot;
    const scale = metresPerPixel({ latitudeDeg: this.onMap().lat, zoom: this.map.getZoom() });
    const subjectPx = cameraDistanceM / scale;
    const framing = this.framing();
    const size = this.size();
    const painted = [framing.bearingDeg, framing.horizontalFovDeg, size.edgePx, subjectPx].join(
      ' ',
    );
    if (painted === this.paintedFraming) return;
    this.paintedFraming = painted;
    paintFraming(this.figure, framing, size, subjectPx);
  }
}

const sameLook = (one: SpotLook, other: SpotLook): boolean =>
  one.spot === other.spot &&
  one.selected === other.selected &&
  one.ringRangeEv === other.ringRangeEv;

/** By how much to move a window so that both values lie from one edge to the other. */
const shiftInto = (one: number, other: number, from: number, to: number): number => {
  const [low, high] = [Math.min(one, other), Math.max(one, other)];
  return low < from ? low - from : Math.max(0, high - to);
};
