export type Drag = {
  readonly move: (event: PointerEvent) => void;
  /** Exactly one of these two ends a drag. */
  readonly drop: () => void;
  readonly cancel: () => void;
};

const CLICK_SLACK_PX = 4;

/**
 * Follows one pointer from a press on the element. `begin` gives null when a press there drags
 * nothing; then the press is left to the map. A press that hardly moves is a click, not a drag.
 */
export const dragWithPointer = (
  element: HTMLElement | SVGElement,
  begin: (event: PointerEvent) => Drag | null,
): void => {
  let held = false;
  element.addEventListener('pointerdown', (press) => {
    if (!(press instanceof PointerEvent) || press.button !== 0 || !press.isPrimary) return;
    const drag = begin(press);
    held = drag !== null;
    if (drag) follow(element, press, drag);
  });
  // The map starts its own drag from these three; it must not see them when the press is ours.
  for (const type of ['pointerdown', 'mousedown', 'touchstart'])
    element.addEventListener(type, (event) => {
      if (held) event.stopPropagation();
    });
};

const follow = (element: HTMLElement | SVGElement, press: PointerEvent, drag: Drag): void => {
  const listening = new AbortController();
  const { signal } = listening;
  let moved = false;

  element.setPointerCapture(press.pointerId);

  const end = (finish: () => void): void => {
    listening.abort();
    element.classList.remove('dragging');
    if (moved) finish();
  };
  const on = (type: string, act: (event: PointerEvent) => void): void =>
    element.addEventListener(
      type,
      (event) => {
        if (event instanceof PointerEvent && event.pointerId === press.pointerId) act(event);
      },
      { signal },
    );

  on('pointermove', (event) => {
    moved ||=
      Math.hypot(event.clientX - press.clientX, event.clientY - press.clientY) > CLICK_SLACK_PX;
    if (!moved) return;
    element.classList.add('dragging');
    drag.move(event);
  });
  on('pointerup', () => end(drag.drop));
  on('pointercancel', () => end(drag.cancel));
  on('lostpointercapture', () => end(drag.cancel));
  window.addEventListener(
    'keydown',
    (event) => {
      if (event.key === 'Escape') end(drag.cancel);
    },
    { signal },
  );
};
