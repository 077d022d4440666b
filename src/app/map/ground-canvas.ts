import { DomUtil, Layer, Point } from 'leaflet';
import type { LatLng, LeafletEventHandlerFn, Map as LeafletMap, ZoomAnimEvent } from 'leaflet';

/** What part of the Mercator square a canvas shows, in pixels of its zoom. */
export type GroundView = {
  readonly zoom: number;
  /** Of the canvas' left upper corner, from that of the world. */
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
};

export type GroundPainter<Data> = (
  context: CanvasRenderingContext2D,
  view: GroundView,
  data: Data,
) => void;

/** Round the view on each side, so that a short pan shows no edge. */
const MARGIN = 0.2;
const PANE = 'ground';
/** Above tiles, below everything that is named or held. */
const PANE_Z_INDEX = '250';

/** A canvas that pans and zooms with the map and is painted anew when the map stands. */
export class GroundCanvas<Data> extends Layer {
  private readonly canvas = document.createElement('canvas');
  private readonly painter: GroundPainter<Data>;
  private data: Data | null = null;
  private centre: LatLng | null = null;
  private corner = new Point(0, 0);
  private size = new Point(0, 0);
  private zoom = 0;
  private density = 1;
  private frame = 0;

  private readonly mostDensity: number;

  constructor(
    painter: GroundPainter<Data>,
    { className, mostDensity }: { readonly className: string; readonly mostDensity: number },
  ) {
    super();
    this.painter = painter;
    this.mostDensity = mostDensity;
    this.canvas.className = `${className} leaflet-zoom-animated`;
    this.canvas.style.pointerEvents = 'none';
  }

  override onAdd(map: LeafletMap): this {
    paneOf(map).append(this.canvas);
    this.place();
    return this;
  }

  override onRemove(): this {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.canvas.remove();
    return this;
  }

  override getEvents(): Record<string, LeafletEventHandlerFn> {
    return {
      moveend: () => this.place(),
      resize: () => this.place(),
      zoomanim: (event) => this.followZoom(event as ZoomAnimEvent),
    };
  }

  /** Painted with the next frame; of several in one frame the last. */
  show(data: Data): void {
    this.data = data;
    if (this.frame !== 0 || !this.shownOn()) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.paint();
    });
  }

  private shownOn(): LeafletMap | undefined {
    return this._map;
  }

  private place(): void {
    const map = this.shownOn();
    if (!map) return;
    this.centre = map.getCenter();
    this.zoom = map.getZoom();
    const margin = marginOf(map);
    const size = map.getSize().add(margin.multiplyBy(2));
    const corner = map.containerPointToLayerPoint(margin.multiplyBy(-1));
    this.corner = map.getPixelOrigin().add(corner);
    this.density = Math.min(this.mostDensity, window.devicePixelRatio || 1);
    this.size = size;
    this.canvas.width = Math.round(size.x * this.density);
    this.canvas.height = Math.round(size.y * this.density);
    this.canvas.style.width = `${size.x}px`;
    this.canvas.style.height = `${size.y}px`;
    DomUtil.setPosition(this.canvas, corner);
    this.paint();
  }

  private paint(): void {
    const context = this.canvas.getContext('2d');
    const { x: widthPx, y: heightPx } = this.size;
    if (!this.shownOn() || !context || this.data === null || widthPx === 0) return;
    context.setTransform(this.density, 0, 0, this.density, 0, 0);
    context.clearRect(0, 0, widthPx, heightPx);
    const { x: leftPx, y: topPx } = this.corner;
    this.painter(context, { zoom: this.zoom, leftPx, topPx, widthPx, heightPx }, this.data);
  }

  private followZoom({ center, zoom }: ZoomAnimEvent): void {
    const map = this.shownOn();
    if (!map || this.centre === null) return;
    const scale = map.getZoomScale(zoom, this.zoom);
    const half = map.getSize().divideBy(2).add(marginOf(map));
    const originThen = map
      .project(center, zoom)
      .subtract(map.getSize().divideBy(2))
      .add(DomUtil.getPosition(map.getPane('mapPane') ?? map.getContainer()))
      .round();
    const corner = map.project(this.centre, zoom).subtract(half.multiplyBy(scale));
    DomUtil.setTransform(this.canvas, corner.subtract(originThen), scale);
  }
}

const marginOf = (map: LeafletMap): Point => map.getSize().multiplyBy(MARGIN).round();

const paneOf = (map: LeafletMap): HTMLElement => {
  const made = map.getPane(PANE) ?? map.createPane(PANE);
  made.style.zIndex = PANE_Z_INDEX;
  return made;
};
