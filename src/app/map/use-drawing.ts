import type { Map as LeafletMap } from 'leaflet';
import { useEffect, useEffectEvent, useRef, useState } from 'react';
import type { Corner } from '../../core/skyline/obstacle.ts';
import { startDrawing, type Drawing, type DrawnOutline } from './ground-drawing.ts';

export type DrawingWish = {
  /** What the next clicks draw: a ring, a line, or nothing. */
  readonly draws: 'ring' | 'line' | null;
  /** The outline whose corners can be dragged while nothing is drawn. */
  readonly held: DrawnOutline | null;
  readonly ink: string;
  readonly onDrawn: (outline: DrawnOutline) => void;
  readonly onReshaped: (corners: readonly Corner[]) => void;
  readonly onFailed: () => void;
};

/** Pointer drawing on the map, for as long as there is something to draw or to drag. */
export const useDrawing = (map: LeafletMap, wish: DrawingWish): Drawing | null => {
  const { draws, ink } = wish;
  const [drawing, setDrawing] = useState<Drawing | null>(null);
  const reported = useRef('');
  const onDrawn = useEffectEvent((outline: DrawnOutline) => wish.onDrawn(outline));
  const onReshaped = useEffectEvent((corners: readonly Corner[]) => {
    reported.current = JSON.stringify(corners);
    wish.onReshaped(corners);
  });
  const onFailed = useEffectEvent(() => wish.onFailed());
  const isWanted = draws !== null || wish.held !== null;
  useEffect(
    function startWhenWanted() {
      if (!isWanted) return undefined;
      let wanted = true;
      let started: Drawing | null = null;
      startDrawing(map, ink, { onDrawn, onReshaped }).then(
        (made) => {
          if (!wanted) return made.stop();
          started = made;
          setDrawing(made);
        },
        () => wanted && onFailed(),
      );
      return function stopDrawing() {
        wanted = false;
        started?.stop();
        setDrawing(null);
      };
    },
    [map, ink, isWanted],
  );
  const held = draws === null && wish.held !== null ? JSON.stringify(wish.held) : null;
  useEffect(
    function followWish() {
      if (drawing === null) return;
      if (draws !== null) return drawing.draw(draws === 'ring');
      if (held === null) return drawing.rest();
      const outline = JSON.parse(held) as DrawnOutline;
      // What the hand has just let go of is in it already.
      if (JSON.stringify(outline.corners) === reported.current) return;
      reported.current = '';
      drawing.hold(outline);
    },
    [drawing, draws, held],
  );
  return drawing;
};
