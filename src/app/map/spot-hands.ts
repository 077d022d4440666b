import type { Point } from 'leaflet';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { atan2Deg, wrapDeg360 } from '../../core/units/angle.ts';
import { wholeDegrees } from './bearing-text.ts';
import { placeFromMap, stepFrom } from './map-place.ts';
import type { Drag } from './pointer-drag.ts';
import { dragWithPointer } from './pointer-drag.ts';
import type { SpotView } from './spot-view.ts';

export type SpotReport = {
  readonly onSelect: (id: string) => void;
  readonly onMove: (id: string, point: GeoPoint) => void;
  readonly onTurn: (id: string, bearingDeg: number) => void;
};

const STEP_BEARINGS: Readonly<Record<string, number>> = {
  ArrowUp: 0,
  ArrowRight: 90,
  ArrowDown: 180,
  ArrowLeft: 270,
};

const TURNS: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
};

/** Lets pointer and keyboard work a spot; each change is drawn at once and reported when let go. */
export const giveHands = (view: SpotView, report: () => SpotReport): void => {
  const { button, handle, wedge } = view.figure;
  const { map } = view;
  const moved = (): void => report().onMove(view.look.spot.id, view.point);
  const turned = (): void => report().onTurn(view.look.spot.id, view.bearingDeg);

  selectOnClick(button, () => report().onSelect(view.look.spot.id));
  button.addEventListener('focus', () => {
    if (button.matches(':focus-visible'))
      map.panInside(view.onMap(), { padding: [70, 90], animate: false });
  });

  dragWithPointer(button, (press) => {
    if (!view.look.selected) return null;
    const grip = map
      .mouseEventToContainerPoint(press)
      .subtract(map.latLngToContainerPoint(view.onMap()));
    return holding(view, moved, (event) => {
      const at = map.mouseEventToContainerPoint(event).subtract(grip);
      view.moveTo(placeFromMap(map.containerPointToLatLng(at)));
    });
  });

  for (const part of [handle, wedge])
    dragWithPointer(part, (press) => {
      if (!view.look.selected) return null;
      const gripDeg = view.bearingDeg - azimuthOf(view, map.mouseEventToContainerPoint(press));
      return holding(view, turned, (event) => {
        const pointerDeg = azimuthOf(view, map.mouseEventToContainerPoint(event));
        view.turnTo(wholeDegrees(pointerDeg + gripDeg));
      });
    });

  stepWithKeys(view, button, moved, (key, coarse) => {
    const bearingDeg = STEP_BEARINGS[key];
    if (bearingDeg === undefined) return false;
    view.moveTo(stepFrom(view.point, bearingDeg, coarse ? 10 : 1));
    return true;
  });
  stepWithKeys(view, handle, turned, (key, coarse) => {
    const turnDeg = TURNS[key];
    if (turnDeg === undefined) return false;
    view.turnTo(wrapDeg360(view.bearingDeg + turnDeg * (coarse ? 10 : 1)));
    return true;
  });
};

const azimuthOf = (view: SpotView, pointer: Point): number => {
  const { x, y } = pointer.subtract(view.map.latLngToContainerPoint(view.onMap()));
  return atan2Deg(x, -y);
};

const holding = (view: SpotView, report: () => void, move: (event: PointerEvent) => void): Drag => {
  const letGo = (): void => {
    view.held = false;
    view.figure.root.classList.remove('held');
  };
  return {
    move: (event) => {
      view.held = true;
      view.figure.root.classList.add('held');
      move(event);
    },
    drop: () => {
      letGo();
      report();
    },
    cancel: () => {
      letGo();
      view.takeFromLook();
    },
  };
};

/** A held key changes many times and is reported once, when it comes up or the focus leaves. */
const stepWithKeys = (
  view: SpotView,
  element: HTMLElement,
  report: () => void,
  step: (key: string, coarse: boolean) => boolean,
): void => {
  let changed = false;
  const letGo = (): void => {
    if (!changed) return;
    changed = false;
    view.held = false;
    report();
  };
  element.addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || !step(event.key, event.shiftKey)) return;
    changed = view.held = true;
    event.preventDefault();
    event.stopPropagation();
  });
  element.addEventListener('keyup', letGo);
  element.addEventListener('blur', letGo);
};

/** A click that ends where it was pressed; a pan of the map that began on the spot is none. */
export const selectOnClick = (button: HTMLElement, select: () => void): void => {
  let press: { readonly x: number; readonly y: number } | null = null;
  button.addEventListener('pointerdown', ({ clientX, clientY }) => {
    press = { x: clientX, y: clientY };
  });
  button.addEventListener('click', (click) => {
    click.stopPropagation();
    const from = click.detail === 0 ? null : press;
    if (from && Math.hypot(click.clientX - from.x, click.clientY - from.y) > 4) return;
    select();
  });
};
