import { useRef, type CSSProperties, type PointerEvent, type ReactNode } from 'react';

import { minuteAtShare } from '../../charts/strip-time.ts';
import { look } from '../../state/view.ts';
import { CursorLine } from './CursorLine.tsx';
import { BLOCK_KEYS_ID } from './SetupBlock.tsx';
import { Gutter } from './Gutter.tsx';
import type { DayCursor } from './day-cursor.ts';
import { useFrameThrottle } from './frame-throttle.ts';
import type { Day } from './use-day.ts';

/** How far a finger may slip in a tap. */
const TAP_PX = 10;

type DayGridProps = {
  readonly day: Day;
  readonly cursor: DayCursor;
  readonly columnCount: number;
  readonly kind: 'spots' | 'skies';
  readonly onSelectSpot: (spotId: string) => void;
  readonly children: ReactNode;
};

/**
 * The columns beside their gutter. A mouse over them looks at the minute it stands at, and goes back to
 * the chosen one when it leaves; a press, a tap or a drag chooses.
 */
export function DayGrid(props: DayGridProps): ReactNode {
  const { day, cursor, columnCount, kind, onSelectSpot, children } = props;
  const { frame, chosenMs } = day;
  const plots = useRef<HTMLDivElement>(null);
  const dragging = useRef(false);
  const tapFrom = useRef<number | null>(null);
  const passing = useFrameThrottle((pass: () => void) => pass());

  /** The minute beside the pointer; null above and below the plots, except in a drag. */
  const minuteAt = (clientY: number): number | null => {
    const box = plots.current?.getBoundingClientRect();
    if (box === undefined || box.height === 0) return null;
    const share = (clientY - box.top) / box.height;
    if (!dragging.current && (share < 0 || share > 1)) return null;
    return minuteAtShare(Math.min(1, Math.max(0, share)), frame);
  };
  const choose = (clientY: number): void => {
    passing.drop();
    const minuteMs = minuteAt(clientY) ?? chosenMs;
    cursor.rest(minuteMs);
    look({ minuteMs });
  };
  const selectUnder = ({ target }: { readonly target: EventTarget }): void => {
    const under = target instanceof Element ? target.closest<HTMLElement>('[data-column]') : null;
    const spotId = under?.dataset['column'];
    if (spotId !== undefined && spotId !== day.selected.spotId) onSelectSpot(spotId);
  };

  const onPointerDown = (event: PointerEvent<HTMLDivElement>): void => {
    const onGutter =
      event.target instanceof Element && event.target.closest('.gutter-time') !== null;
    if (event.button !== 0 || isOnControl(event)) return;
    if (minuteAt(event.clientY) === null) return;
    if (event.pointerType !== 'mouse' && !onGutter) {
      tapFrom.current = event.clientY;
      return;
    }
    event.preventDefault();
    selectUnder(event);
    dragging.current = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget
      .querySelector<HTMLElement>('[role="slider"]')
      ?.focus({ preventScroll: true });
    cursor.pass(minuteAt(event.clientY) ?? chosenMs);
  };
  const onPointerMove = ({ pointerType, clientY }: PointerEvent): void => {
    if (pointerType !== 'mouse' && !dragging.current) return;
    passing.put(() => cursor.pass(minuteAt(clientY) ?? cursor.state().minuteMs));
  };
  const onPointerUp = (event: PointerEvent): void => {
    const tapped = tapFrom.current !== null && Math.abs(event.clientY - tapFrom.current) < TAP_PX;
    tapFrom.current = null;
    if (tapped) selectUnder(event);
    if (!dragging.current && !tapped) return;
    choose(event.clientY);
    dragging.current = false;
  };
  const goBack = (): void => {
    if (dragging.current) return;
    passing.drop();
    cursor.rest(chosenMs);
  };

  const columns: CSSProperties & { readonly '--columns': number } = { '--columns': columnCount };
  return (
    <div
      className={`day-grid ${kind}`}
      role="group"
      aria-label="The day, spot by spot"
      data-day-grid
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={() => {
        dragging.current = false;
        tapFrom.current = null;
        goBack();
      }}
      onPointerLeave={goBack}
    >
      <p id={BLOCK_KEYS_ID} hidden>
        Arrows move a setup by 5 minutes, with Shift by 1; with Alt they stretch it; Enter opens it
        in Setup.
      </p>
      <div className="day-columns" style={columns}>
        <Gutter day={day} cursor={cursor} />
        {children}
        <div className="cursor-layer" ref={plots}>
          <CursorLine cursor={cursor} frame={frame} chosenMs={chosenMs} />
        </div>
      </div>
    </div>
  );
}

const isOnControl = ({ target }: { readonly target: EventTarget }): boolean =>
  target instanceof Element && target.closest('button, a, [data-block]') !== null;
