import { Layer } from 'leaflet';
import type { Map as LeafletMap } from 'leaflet';
import { freeBoxes } from './free-boxes.ts';
import type { MapSpot } from './map-spot.ts';
import type { EvRange } from './ring-tone.ts';
import type { SpotReport } from './spot-hands.ts';
import { giveHands } from './spot-hands.ts';
import { SpotView } from './spot-view.ts';

export type SpotLayerData = SpotReport & {
  readonly spots: readonly MapSpot[];
  readonly selectedId: string | null;
  readonly ringRangeEv: EvRange;
};

const namesOf = ({ spots, selectedId }: SpotLayerData): string =>
  JSON.stringify([selectedId, spots.map(({ id, name, point }) => [id, name, point])]);

class SpotLayer extends Layer {
  private readonly views = new Map<string, SpotView>();
  private data: SpotLayerData | null = null;
  /** Undefined until the first view is there. */
  private revealedId: string | null | undefined;
  /** What the names were last placed for: a new shade of a ring moves none of them. */
  private named = '';

  override onAdd(): this {
    if (this.data) this.show(this.data);
    return this;
  }

  override onRemove(): this {
    for (const view of this.views.values()) view.remove();
    this.views.clear();
    this.named = '';
    this.revealedId = undefined;
    return this;
  }

  override getEvents(): Record<string, () => void> {
    const settle = (): void => {
      for (const view of this.views.values()) view.settle();
      this.placeNames();
    };
    return { moveend: settle, resize: settle };
  }

  show(data: SpotLayerData): void {
    this.data = data;
    const map = this._map as LeafletMap | undefined;
    if (!map) return;
    const { spots, selectedId, ringRangeEv } = data;
    const ids = new Set(spots.map(({ id }) => id));
    for (const [id, view] of this.views)
      if (!ids.has(id)) {
        view.remove();
        this.views.delete(id);
      }
    for (const spot of spots) {
      const look = { spot, selected: spot.id === selectedId, ringRangeEv };
      const view = this.views.get(spot.id);
      if (view) view.show(look);
      else this.views.set(spot.id, this.makeView(map, look, data));
    }
    const named = namesOf(data);
    if (named !== this.named) this.placeNames();
    this.named = named;
    if (this.revealedId !== selectedId) this.reveal(selectedId);
  }

  /** A spot chosen in a list may lie out of view, and so may the handle that turns its camera. */
  private reveal(selectedId: string | null): void {
    const gliding = this.revealedId !== undefined;
    this.revealedId = selectedId;
    if (selectedId !== null) this.views.get(selectedId)?.reveal({ gliding });
  }

  private makeView(
    map: LeafletMap,
    look: ConstructorParameters<typeof SpotView>[1],
    data: SpotLayerData,
  ): SpotView {
    const view = new SpotView(map, look);
    giveHands(view, () => this.data ?? data);
    return view;
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
