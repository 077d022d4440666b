import {
  useId,
  useRef,
  useState,
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
} from 'react';

import type { PixelPoint } from '../../../../core/skyline/photo-sight.ts';
import type { OpenPhoto } from './use-trace-photo.ts';

/** What a press in the picture sets. */
export type StageTool = 'first' | 'second' | 'line';

type PhotoStageProps = {
  readonly photo: OpenPhoto;
  readonly tool: StageTool;
  readonly marks: readonly (PixelPoint | null)[];
  readonly line: readonly PixelPoint[];
  readonly zoom: number;
  readonly onPut: (pixel: PixelPoint) => void;
  readonly onTakeBack: () => void;
};

const STEP_SHARE = 0.01;
const FINE_SHARE = 0.001;
/** A stroke leaves a point every so much of the width. */
const STROKE_SHARE = 0.004;

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The photo, marked by pointer or by a cursor that the arrow keys move. */
export function PhotoStage(props: PhotoStageProps): ReactNode {
  const { photo, tool, marks, line, zoom, onPut, onTakeBack } = props;
  const { widthPx, heightPx, url, name } = photo;
  const id = useId();
  const stage = useRef<HTMLDivElement>(null);
  const last = useRef<PixelPoint | null>(null);
  const [cursor, setCursor] = useState<PixelPoint>({ xPx: widthPx / 2, yPx: heightPx / 2 });
  const within = (xPx: number, yPx: number): PixelPoint => ({
    xPx: Math.min(widthPx, Math.max(0, xPx)),
    yPx: Math.min(heightPx, Math.max(0, yPx)),
  });
  const pixelOf = (event: PointerEvent): PixelPoint => {
    const box = stage.current?.getBoundingClientRect() ?? new DOMRect(0, 0, 1, 1);
    return within(
      ((event.clientX - box.left) / box.width) * widthPx,
      ((event.clientY - box.top) / box.height) * heightPx,
    );
  };
  const put = (pixel: PixelPoint): void => {
    last.current = pixel;
    setCursor(pixel);
    onPut(pixel);
  };

  const onPointerDown = (event: PointerEvent<HTMLDivElement>): void => {
    if (event.button !== 0) return;
    event.currentTarget.focus();
    if (tool === 'line') event.currentTarget.setPointerCapture(event.pointerId);
    put(pixelOf(event));
  };
  const onPointerMove = (event: PointerEvent<HTMLDivElement>): void => {
    if (tool !== 'line' || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const pixel = pixelOf(event);
    const before = last.current;
    if (
      before !== null &&
      Math.hypot(pixel.xPx - before.xPx, pixel.yPx - before.yPx) < STROKE_SHARE * widthPx
    )
      return;
    put(pixel);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = STEPS[event.key];
    if (step !== undefined) {
      event.preventDefault();
      const far =
        widthPx * (event.altKey ? FINE_SHARE : event.shiftKey ? 5 * STEP_SHARE : STEP_SHARE);
      setCursor(within(cursor.xPx + step[0] * far, cursor.yPx + step[1] * far));
    } else if (event.key === 'Enter') {
      event.preventDefault();
      put(cursor);
    } else if (event.key === 'Backspace') {
      event.preventDefault();
      onTakeBack();
    }
  };

  const size = widthPx / (zoom * 60);
  const cursorText = `${percent(cursor.xPx / widthPx)} from the left, ${percent(cursor.yPx / heightPx)} from the top`;
  return (
    <>
      <div className="stage-window">
        <div
          ref={stage}
          className="photo-stage"
          style={{ width: `${zoom * 100}%`, aspectRatio: `${widthPx} / ${heightPx}` }}
          role="slider"
          aria-valuenow={Math.round((cursor.xPx / widthPx) * 100)}
          aria-valuetext={cursorText}
          aria-label={`Marks on ${name}`}
          aria-describedby={`${id}-keys`}
          tabIndex={0}
          data-photo-stage
          data-tool={tool}
          onPointerDown={onPointerDown}
          onPointerMove={onPointerMove}
          onKeyDown={onKeyDown}
        >
          <img src={url} alt="" draggable={false} />
          <svg viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true">
            <Line points={line} />
            {line.map(({ xPx, yPx }) => (
              <circle key={`${xPx} ${yPx}`} cx={xPx} cy={yPx} r={size / 8} className="knot" />
            ))}
            <Cross at={cursor} size={size / 2} className="cursor" />
            {marks.map((mark, index) =>
              mark === null ? null : (
                <g key={index === 0 ? 'first' : 'second'}>
                  <Cross at={mark} size={size} className="mark" />
                  <text x={mark.xPx + size} y={mark.yPx - size / 2} fontSize={1.6 * size}>
                    {index + 1}
                  </text>
                </g>
              ),
            )}
          </svg>
        </div>
      </div>
      <p className="quiet" id={`${id}-keys`} data-figure="photo-cursor">
        The cross stands {cursorText}. Arrow keys move it, Enter marks, Backspace takes the last
        mark back.
      </p>
    </>
  );
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

const Line = ({ points }: { readonly points: readonly PixelPoint[] }): ReactNode => {
  const path = points
    .toSorted((one, other) => one.xPx - other.xPx)
    .map(({ xPx, yPx }) => `${xPx},${yPx}`)
    .join(' ');
  return (
    <>
      <polyline points={path} className="halo" />
      <polyline points={path} className="drawn" />
    </>
  );
};

type CrossProps = { readonly at: PixelPoint; readonly size: number; readonly className: string };

const Cross = ({ at: { xPx, yPx }, size, className }: CrossProps): ReactNode => {
  const path = `M${xPx - size} ${yPx}H${xPx + size}M${xPx} ${yPx - size}V${yPx + size}`;
  return (
    <>
      <path d={path} className="halo" />
      <path d={path} className={className} />
    </>
  );
};
