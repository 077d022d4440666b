import { useRef, useState, type PointerEvent } from 'react';

import { MS_PER_MIN, movedBlock, snapped, stretchedBlock, type BlockTime } from './block-time.ts';
import type { DaySpan } from './day-span.ts';
import { useFrameThrottle } from './frame-throttle.ts';

type DragHandlers = {
  readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerUp: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerCancel: (event: PointerEvent<HTMLElement>) => void;
};

type BlockDrag = {
  /** The time under way, or null when nothing moves. */
  readonly draft: BlockTime | null;
  readonly setDraft: (draft: BlockTime | null) => void;
  /** For the block itself; its lower edge carries `data-block-edge`. */
  readonly handlers: DragHandlers;
};

const SNAP_MIN = 5;
/** Less than this is a click. */
const SLACK_PX = 4;

type Given = {
  readonly block: BlockTime;
  readonly day: DaySpan;
  readonly msPerPx: (element: HTMLElement) => number;
  readonly onClick: () => void;
  readonly onDone: (block: BlockTime) => void;
};

/** A block moved by its body or stretched by its lower edge, in steps of five minutes. */
export function useBlockDrag({ block, day, msPerPx, onClick, onDone }: Given): BlockDrag {
  const [draft, setDraft] = useState<BlockTime | null>(null);
  const showing = useFrameThrottle(setDraft);
  const grip = useRef<{ y: number; msPerPx: number; edge: boolean; moved: boolean } | null>(null);

  const at = (clientY: number): BlockTime | null => {
    const held = grip.current;
    if (held === null) return null;
    if (Math.abs(clientY - held.y) > SLACK_PX) held.moved = true;
    if (!held.moved) return null;
    const byMs = (clientY - held.y) * held.msPerPx;
    if (held.edge) {
      const endMs = snapped(block.startMs + block.durationMin * MS_PER_MIN + byMs, SNAP_MIN);
      const durationMin = Math.round((endMs - block.startMs) / MS_PER_MIN);
      return stretchedBlock(block, durationMin - block.durationMin);
    }
    const startMs = snapped(block.startMs + byMs, SNAP_MIN);
    return movedBlock(block, (startMs - block.startMs) / MS_PER_MIN, day);
  };
  const end = (): void => {
    grip.current = null;
    showing.drop();
    setDraft(null);
  };
  const handlers: DragHandlers = {
    onPointerDown: (event) => {
      if (event.button !== 0) return;
      event.stopPropagation();
      const edge = event.target instanceof Element && event.target.matches('[data-block-edge]');
      event.currentTarget.setPointerCapture(event.pointerId);
      grip.current = {
        y: event.clientY,
        msPerPx: msPerPx(event.currentTarget),
        edge,
        moved: false,
      };
    },
    onPointerMove: (event) => {
      if (grip.current === null) return;
      event.stopPropagation();
      const next = at(event.clientY);
      if (next !== null) showing.put(next);
    },
    onPointerUp: (event) => {
      if (grip.current === null) return;
      const next = at(event.clientY);
      end();
      if (next === null) onClick();
      else onDone(next);
    },
    onPointerCancel: end,
  };
  return { draft, setDraft, handlers };
}
