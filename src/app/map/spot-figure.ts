import { bearingShort, bearingSpoken, wholeDegrees } from './bearing-text.ts';
import type { MapSpot } from './map-spot.ts';
import { RING_HOLE, ringSectorPaths } from './ring-sectors.ts';
import type { EvRange } from './ring-tone.ts';
import { ringTone } from './ring-tone.ts';
import { acrossPath, wedge, wedgePath } from './wedge.ts';

/** What stands on the map for one spot; every figure in pixels from the spot, y down. */
export type SpotFigure = {
  readonly root: HTMLElement;
  readonly wedge: SVGPathElement;
  readonly subject: SVGPathElement;
  readonly ring: SVGGElement;
  readonly button: HTMLButtonElement;
  readonly name: HTMLElement;
  readonly handle: HTMLElement;
  readonly bearing: HTMLElement;
};

export type FigureSize = { readonly ringPx: number; readonly edgePx: number };

/** Closer to the spot than this, the line at the subject would lie under the dot. */
const SUBJECT_FROM_PX = 14;

export const makeSpotFigure = (): SpotFigure => {
  const root = document.createElement('div');
  root.className = 'spot';
  const drawing = svg('svg');
  drawing.ariaHidden = 'true';
  const figure: SpotFigure = {
    root,
    wedge: svg('path'),
    subject: svg('path'),
    ring: svg('g'),
    button: document.createElement('button'),
    name: document.createElement('span'),
    handle: document.createElement('div'),
    bearing: document.createElement('span'),
  };
  figure.wedge.classList.add('spot-wedge');
  figure.subject.classList.add('spot-subject');
  figure.ring.classList.add('spot-ring');
  drawing.append(figure.wedge, figure.ring, figure.subject, circle('spot-dot', 5.5));
  figure.button.type = 'button';
  figure.button.className = 'spot-button';
  figure.name.className = 'spot-name';
  figure.name.ariaHidden = 'true';
  figure.handle.className = 'spot-handle';
  figure.handle.role = 'slider';
  figure.handle.tabIndex = 0;
  figure.handle.ariaValueMin = '0';
  figure.handle.ariaValueMax = '359';
  figure.bearing.className = 'spot-bearing';
  figure.bearing.ariaHidden = 'true';
  root.append(drawing, figure.name, figure.button, figure.handle, figure.bearing);
  return figure;
};

export const paintRing = (
  { ring }: SpotFigure,
  ringEv: readonly number[] | null,
  range: EvRange,
): void => {
  const count = ringEv?.length ?? 0;
  if (ring.childElementCount !== count + 2)
    ring.replaceChildren(
      ...ringSectorPaths(count).map((sector) => {
        const path = svg('path');
        path.setAttribute('d', sector);
        return path;
      }),
      circle('spot-ring-edge', 1),
      circle('spot-ring-edge', RING_HOLE),
    );
  ringEv?.forEach((ev, index) => {
    const tone = ringTone(ev, range);
    const sector = ring.children[index];
    sector?.setAttribute('class', tone === null ? 'ground' : 'sky');
    sector?.setAttribute('fill', tone ?? '');
  });
  ring.classList.toggle('unknown', count === 0);
};

export const paintName = (
  { root, button, name, handle }: SpotFigure,
  spotName: string,
  selected: boolean,
): void => {
  root.classList.toggle('selected', selected);
  name.textContent = spotName;
  button.ariaLabel = spotName;
  button.title = spotName;
  button.ariaPressed = String(selected);
  button.ariaDescription = 'Arrow keys move the spot 1 m, with Shift 10 m';
  handle.ariaLabel = `Camera bearing, ${spotName}`;
  handle.hidden = !selected;
};

export const paintFraming = (
  { wedge: wedgeShape, subject, ring, button, handle, bearing }: SpotFigure,
  { bearingDeg, horizontalFovDeg }: Pick<MapSpot, 'bearingDeg' | 'horizontalFovDeg'>,
  { ringPx, edgePx }: FigureSize,
  subjectPx: number,
): void => {
  const shape = wedge({ bearingDeg, horizontalFovDeg, edgePx });
  const depthPx = Math.hypot(shape.handle.x, shape.handle.y);
  const subjectSeen = subjectPx >= SUBJECT_FROM_PX && subjectPx < depthPx;
  wedgeShape.setAttribute('d', wedgePath(shape));
  subject.setAttribute('d', subjectSeen ? acrossPath(shape, subjectPx) : '');
  ring.setAttribute('transform', `scale(${ringPx})`);
  button.style.width = button.style.height = `${Math.max(44, 2 * ringPx)}px`;
  handle.style.left = bearing.style.left = `${shape.handle.x}px`;
  handle.style.top = bearing.style.top = `${shape.handle.y}px`;
  handle.ariaValueNow = String(wholeDegrees(bearingDeg));
  handle.ariaValueText = bearingSpoken(bearingDeg);
  bearing.textContent = bearingShort(bearingDeg);
};

const svg = <Name extends keyof SVGElementTagNameMap>(name: Name): SVGElementTagNameMap[Name] =>
  document.createElementNS('http://www.w3.org/2000/svg', name);

const circle = (className: string, radius: number): SVGCircleElement => {
  const made = svg('circle');
  made.setAttribute('class', className);
  made.setAttribute('r', String(radius));
  return made;
};
