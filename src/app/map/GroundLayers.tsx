import './ground.css';
import type { Map as LeafletMap } from 'leaflet';
import { useEffect, useMemo, type ReactNode } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { Corner, Obstacle } from '../../core/skyline/obstacle.ts';
import type { ShadowSun } from '../../core/skyline/shadow.ts';
import type { DrawnOutline } from './ground-drawing.ts';
import { groundShapes, type GroundOutline } from './ground-shapes.ts';
import { outlineAt } from './outline-at.ts';
import { drawShadowLayer, makeShadowLayer } from './shadow-layer.ts';
import { shadowField } from './shadow-path.ts';
import { drawSketchLayer, makeSketchLayer } from './sketch-layer.ts';
import { drawStandingLayer, makeStandingLayer } from './standing-layer.ts';
import { useDrawing } from './use-drawing.ts';
import { useGroundInput } from './use-ground-input.ts';
import { useMapColours } from './use-map-colours.ts';
import { useMapLayer } from './use-map-layer.ts';

export type GroundLayersProps = {
  readonly map: LeafletMap;
  readonly outlines: readonly GroundOutline[];
  readonly obstacles: readonly Obstacle[];
  /** Null while there is no place to see the sun from. */
  readonly sun: ShadowSun | null;
  /** Civil date, for the leaves. */
  readonly date: string;
  /** What the shadows are, or why there are none. */
  readonly note: string;
  /** Clicks and Enter are the ground's. */
  readonly listening: boolean;
  readonly draws: 'ring' | 'line' | null;
  /** Corners of what is drawn that were not set by pointer. */
  readonly corners: readonly Corner[];
  /** Drawn stronger, its corners in the hand. */
  readonly held: (DrawnOutline & { readonly key: string }) | null;
  readonly onDrawn: (outline: DrawnOutline) => void;
  readonly onReshaped: (corners: readonly Corner[]) => void;
  readonly onCorner: (place: GeoPoint) => void;
  /** What stands at a place that was clicked, or at the cross. */
  readonly onPick: (key: string | null) => void;
  readonly onEscape: () => void;
  readonly onDrawingFailed: () => void;
};

const DARKNESS = { light: 0.36, dim: 0.62 } as const;

/** What stands on the ground, its shadows, and the hand that draws it. */
export function GroundLayers(props: GroundLayersProps): ReactNode {
  const { map, outlines, obstacles, sun, date, note, listening, draws, corners, held } = props;
  const colours = useMapColours();
  const shapes = useMemo(() => groundShapes(outlines), [outlines]);
  const darkness = isDark(colours.land) ? DARKNESS.dim : DARKNESS.light;
  const field = useMemo(() => shadowField(obstacles), [obstacles]);
  const shadows = useMemo(() => ({ field, sun, date, darkness }), [field, sun, date, darkness]);
  const chosenKey = held?.key ?? null;
  const standing = useMemo(
    () => ({ shapes, ink: colours.ink, chosenKey }),
    [shapes, colours.ink, chosenKey],
  );
  const sketch = useMemo(
    () => ({ corners, closed: draws === 'ring', ink: colours.ink }),
    [corners, draws, colours.ink],
  );
  useMapLayer(map, makeShadowLayer, drawShadowLayer, shadows);
  useMapLayer(map, makeStandingLayer, drawStandingLayer, standing);
  useMapLayer(map, makeSketchLayer, drawSketchLayer, sketch);

  const drawing = useDrawing(map, {
    draws,
    held: held && { closed: held.closed, corners: held.corners },
    ink: colours.ink,
    onDrawn: props.onDrawn,
    onReshaped: props.onReshaped,
    onFailed: props.onDrawingFailed,
  });
  const pick = (place: GeoPoint): void => props.onPick(outlineAt(shapes, place, map.getZoom()));
  useGroundInput(map, listening, {
    picks: draws === null,
    onClick: pick,
    onEnter: (place) => {
      if (draws === null) pick(place);
      else if (drawing?.isDrawing() !== true) props.onCorner(place);
    },
    onEscape: props.onEscape,
  });
  useEffect(
    function markMap() {
      const { classList } = map.getContainer();
      classList.toggle('ground-listens', listening);
      classList.toggle('ground-draws', draws !== null);
      return () => classList.remove('ground-listens', 'ground-draws');
    },
    [map, listening, draws],
  );
  return (
    <p className="map-note ground-note" data-note="shadows">
      {note}
    </p>
  );
}

/** Whether a colour such as '#242422' is darker than a card. */
const isDark = (colour: string): boolean => Number.parseInt(colour.slice(1, 3), 16) < 0x76;
