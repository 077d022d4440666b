import { Layer } from 'leaflet';
import type { Map as LeafletMap } from 'leaflet';
import { freeBoxes } from './free-boxes.ts';
import type { MapSpot } from './map-spot.ts';
import type { EvRange } from './ring-tone.ts';
import { SpotDot } from './spot-dot.ts';
import type { SpotReport } from './spot-hands.ts';
import { giveHands } from './spot-hands.ts';
import { SpotView } from './spot-view.ts';
import { spotsShown } from './spots-shown.ts';

export type SpotLayerData = SpotReport & {
  readonly spots: readonly MapSpot[];
  readonly selectedId: string | null;
  readonly ringRangeEv: EvRange;
  /** Called with whether the spots in view are too many to have rings. */
  readonly onCrowded: (crowded: boolean) => void;
};

/** New views a frame: more at once would hold up the hand that moves the map. */
const VIEWS_A_FRAME = 6;

class SpotLayer extends Layer {
  private readonly views = new Map<string, SpotView>();
  private readonly dots = new Map<string, SpotDot>();
  private data: SpotLayerData | null = null;
  /** Undefined until the first view is there. */
  private revealedId: string | null | undefined;
  /** What the names were last placed for: a new shade of a ring moves none of them. */
  private named = '';
  private frame = 0;

  override onAdd(): this {
    if (this.data) this.show(this.data);
    return this;
  }

  override onRemove(): this {
    cancelAnimationFrame(this.frame);
    for (const drawn of [...this.views.values(), ...this.dots.values()]) drawn.remove();
    this.views.clear();
    this.dots.clear();
    this.named = '';
    this.revealedId = undefined;
    return this;
  }

  override getEvents(): Record<string, () => void> {
    const settle = (): void => {
      for (const drawn of [...this.views.values(), ...this.dots.values()]) drawn.settle();
      this.named = '';
      this.arrange();
    };
    return { moveend: settle, resize: settle };
  }

  show(data: SpotLayerData): void {
    this.data = data;
    if (!(this._map as LeafletMap | undefined)) return;
    this.arrange();
    const { selectedId } = data;
    if (this.revealedId !== selectedId) this.reveal(selectedId);
  }

  /** Draws the spots that are to be seen, takes the others away, and goes on in the next frame. */
  private arrange(): void {
    cancelAnimationFrame(this.frame);
    const { data } = this;
    if (data === null) return;
    const { whole, dots, crowded } = spotsShown(this._map, data.spots, data.selectedId);
    data.onCrowded(crowded);
    const lacking = whole.filter(({ id }) => !this.views.has(id));
    const now = new Set([
      ...(data.selectedId === null ? [] : [data.selectedId]),
      ...lacking.slice(0, VIEWS_A_FRAME).map(({ id }) => id),
    ]);
    const later = lacking.filter(({ id }) => !now.has(id));
    this.takeAway(new Set(data.spots.map(({ id }) => id)), whole, [...dots, ...later]);
    for (const spot of whole) this.drawWhole(spot, data, now.has(spot.id));
    for (const spot of [...dots, ...later]) this.drawDot(spot, data);
    this.placeNamesOnce();
    if (later.length > 0) this.frame = requestAnimationFrame(() => this.arrange());
  }

  private drawWhole(spot: MapSpot, data: SpotLayerData, make: boolean): void {
    const { ringRangeEv, selectedId } = data;
    const look = { spot, selected: spot.id === selectedId, ringRangeEv };
    const view = this.views.get(spot.id);
    if (view) return view.show(look);
    if (!make) return;
    const made = new SpotView(this._map, look);
    giveHands(made, () => this.data ?? data);
    this.views.set(spot.id, made);
    this.handOver(spot.id, made);
  }

  private drawDot(spot: MapSpot, data: SpotLayerData): void {
    const dot = this.dots.get(spot.id);
    if (dot) return dot.show(spot);
    const onSelect = (id: string): void => (this.data ?? data).onSelect(id);
    this.dots.set(spot.id, new SpotDot(this._map, spot, onSelect));
  }

  /** A spot under the hand or in focus stays until it is let go. */
  private takeAway(
    known: ReadonlySet<string>,
    whole: readonly MapSpot[],
    dots: readonly MapSpot[],
  ): void {
    const asView = new Set(whole.map(({ id }) => id));
    const asDot = new Set(dots.map(({ id }) => id));
    for (const [id, view] of this.views) {
      const inUse = view.held || view.figure.root.contains(document.activeElement);
      if (asView.has(id) || (inUse && known.has(id) && !asDot.has(id))) continue;
      view.remove();
      this.views.delete(id);
    }
    for (const [id, dot] of this.dots) {
      const inFocus = dot.button === document.activeElement;
      if (asDot.has(id) || (inFocus && known.has(id))) continue;
      dot.remove();
      this.dots.delete(id);
    }
  }

  /** The dot in focus has become a whole spot: the focus goes along. */
  private handOver(id: string, view: SpotView): void {
    const dot = this.dots.get(id);
    if (!dot) return;
    if (dot.button === document.activeElement) view.figure.button.focus({ preventScroll: true });
    dot.remove();
    this.dots.delete(id);
  }

  /** A spot chosen in a list may lie out of view, and so may the handle that turns its camera. */
  private reveal(selectedId: string | null): void {
    const gliding = this.revealedId !== undefined;
    this.revealedId = selectedId;
    if (selectedId !== null) this.views.get(selectedId)?.reveal({ gliding });
  }

  private placeNamesOnce(): void {
    const named = JSON.stringify([
      this.data?.selectedId,
      [...this.views.values()].map(({ look: { spot } }) => [spot.id, spot.name, spot.point]),
    ]);
    if (named !== this.named) this.placeNames();
    this.named = named;
  }

  /** Below the ring, else above it, else not until a closer view; the selected name always stands. */
  private placeNames(): void {
    const views = [...this.views.values()].toSorted(
      (one, other) => Number(other.look.selected) - Number(one.look.selected),
    );
    const free = freeBoxes(
      views.map((view) => view.nameBoxes()),
      views.map((view) => view.ringBox()),
    );
    views.forEach((view, index) => view.placeName(free[index] ?? -1));
  }
}

export const makeSpotLayer = (): SpotLayer => new SpotLayer();

export const drawSpotLayer = (layer: SpotLayer, data: SpotLayerData): void => layer.show(data);
