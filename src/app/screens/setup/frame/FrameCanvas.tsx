import { useEffect, useRef, type ReactNode } from 'react';

import type { FramePixels } from '../../../../core/plan/frame-pixels.ts';

/** Drawn over the picture, fractions from its centre. */
export type FrameMark = {
  readonly kind: 'rectangle' | 'ellipse';
  readonly xFraction: number;
  readonly yFraction: number;
  readonly widthFraction: number;
  readonly heightFraction: number;
};

type FrameCanvasProps = {
  readonly pixels: FramePixels | null;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly label: string;
  readonly mark: FrameMark | null;
};

/** A picture as it was computed, pixel for pixel. */
export function FrameCanvas(props: FrameCanvasProps): ReactNode {
  const { pixels, widthPx, heightPx, label, mark } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(
    function draw() {
      const context = canvas.current?.getContext('2d');
      if (!context || pixels === null) return;
      context.putImageData(new ImageData(pixels.rgba, pixels.widthPx, pixels.heightPx), 0, 0);
      if (mark !== null) drawMark(context, mark, pixels);
    },
    [pixels, mark],
  );
  return (
    <canvas
      ref={canvas}
      width={pixels?.widthPx ?? widthPx}
      height={pixels?.heightPx ?? heightPx}
      role="img"
      aria-label={label}
      data-figure="predicted-frame"
      data-drawn={pixels === null ? undefined : 'drawn'}
    />
  );
}

/** White over black dashes, so that it stands out on any tone. */
function drawMark(
  context: CanvasRenderingContext2D,
  mark: FrameMark,
  { widthPx, heightPx }: FramePixels,
): void {
  const [x, y] = [(0.5 + mark.xFraction) * widthPx, (0.5 - mark.yFraction) * heightPx];
  const [width, height] = [mark.widthFraction * widthPx, mark.heightFraction * heightPx];
  for (const [colour, dash] of [
    ['black', []],
    ['white', [6, 4]],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = 2;
    context.setLineDash([...dash]);
    context.beginPath();
    if (mark.kind === 'rectangle') context.rect(x - width / 2, y - height / 2, width, height);
    else context.ellipse(x, y, width / 2, height / 2, 0, 0, 2 * Math.PI);
    context.stroke();
  }
  context.setLineDash([]);
}
