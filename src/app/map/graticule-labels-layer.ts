import { Layer } from 'leaflet';
import type { Map as LeafletMap } from 'leaflet';
import { wrapDeg180 } from '../../core/units/angle.ts';
import { graticuleLines, graticuleStepDeg } from './graticule-step.ts';

/** Buttons, legend and the other edge's labels stand this far into the corners. */
const CORNER_PX = 50;

/** Degrees along the top and the left edge of the view; stands still while the map moves under it. */
class GraticuleLabelsLayer extends Layer {
  private readonly frame = document.createElement('div');

  override onAdd(map: LeafletMap): this {
    this.frame.className = 'graticule-labels';
    this.frame.ariaHidden = 'true';
    map.getContainer().append(this.frame);
    this.place();
    return this;
  }

  override onRemove(): this {
    this.frame.remove();
    return this;
  }

  override getEvents(): Record<string, () => void> {
    return {
      move: () => this.place(),
      resize: () => this.place(),
      zoomstart: () => this.frame.replaceChildren(),
      zoomend: () => this.place(),
    };
  }

  private place(): void {
    const map = this._map;
    const bounds = map.getBounds();
    const stepDeg = graticuleStepDeg(map.getZoom());
    const east = graticuleLines({ fromDeg: bounds.getWest(), toDeg: bounds.getEast(), stepDeg });
    const north = graticuleLines({
      fromDeg: Math.max(-85, bounds.getSouth()),
      toDeg: Math.min(85, bounds.getNorth()),
      stepDeg,
    });
    const size = map.getSize();
    const digits = decimals(stepDeg);
    this.frame.replaceChildren(
      ...east.flatMap((longitudeDeg) => {
        const { x } = map.latLngToContainerPoint([0, longitudeDeg]);
        const text = degrees(wrapDeg180(longitudeDeg), digits, 'E', 'W');
        return x > CORNER_PX && x < size.x - 2 * CORNER_PX ? [label(text, 'top', x)] : [];
      }),
      ...north.flatMap((latitudeDeg) => {
        const { y } = map.latLngToContainerPoint([latitudeDeg, 0]);
        const text = degrees(latitudeDeg, digits, 'N', 'S');
        return y > CORNER_PX / 2 && y < size.y - 2 * CORNER_PX ? [label(text, 'left', y)] : [];
      }),
    );
  }
}

export const makeGraticuleLabelsLayer = (): GraticuleLabelsLayer => new GraticuleLabelsLayer();

/** Nothing to hand over: the labels follow the view alone. */
export const drawGraticuleLabelsLayer = (): void => undefined;

const label = (text: string, edge: 'top' | 'left', at: number): HTMLElement => {
  const made = document.createElement('span');
  made.className = edge;
  made.textContent = text;
  made.style.translate = edge === 'top' ? `${at}px 0` : `0 ${at}px`;
  return made;
};

const decimals = (stepDeg: number): number => String(stepDeg).split('.')[1]?.length ?? 0;

const degrees = (angleDeg: number, digits: number, positive: string, negative: string): string => {
  const size = Math.abs(angleDeg);
  const side = size === 0 || size === 180 ? '' : ` ${angleDeg < 0 ? negative : positive}`;
  return `${size.toFixed(digits)}°${side}`;
};
