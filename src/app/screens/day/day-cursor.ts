import { useEffect, useState, useSyncExternalStore } from 'react';

/** Where the cursor is, and whether it is still on its way. */
export type CursorState = { readonly minuteMs: number; readonly moving: boolean };

/** The minute that is looked at while the pointer travels; it changes without the screen drawing anew. */
export type DayCursor = {
  readonly state: () => CursorState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Looks at a minute in passing. */
  readonly pass: (minuteMs: number) => void;
  /** Comes to rest at a minute. */
  readonly rest: (minuteMs: number) => void;
};

const STILL_AFTER_MS = 150;

export function dayCursor(startMs: number): DayCursor {
  let state: CursorState = { minuteMs: startMs, moving: false };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<() => void>();
  const show = (next: CursorState): void => {
    if (next.minuteMs === state.minuteMs && next.moving === state.moving) return;
    state = next;
    for (const listener of listeners) listener();
  };
  const rest = (minuteMs: number): void => {
    clearTimeout(timer);
    show({ minuteMs, moving: false });
  };
  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    pass: (minuteMs) => {
      if (minuteMs === state.minuteMs) return;
      clearTimeout(timer);
      show({ minuteMs, moving: true });
      timer = setTimeout(() => rest(minuteMs), STILL_AFTER_MS);
    },
    rest,
  };
}

/** A cursor for the screen; it rests at the chosen minute whenever that changes. */
export function useDayCursor(chosenMs: number): DayCursor {
  const [cursor] = useState(() => dayCursor(chosenMs));
  useEffect(
    function followChosenMinute() {
      cursor.rest(chosenMs);
    },
    [cursor, chosenMs],
  );
  return cursor;
}

export const useCursorState = (cursor: DayCursor): CursorState =>
  useSyncExternalStore(cursor.subscribe, cursor.state);
