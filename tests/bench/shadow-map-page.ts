import { shadowPainter } from '../../src/app/map/shadow-layer.ts';
import { shadowField } from '../../src/app/map/shadow-path.ts';
import { mercatorX, mercatorY } from '../../src/app/map/web-mercator.ts';
import type { Obstacle } from '../../src/core/skyline/obstacle.ts';
import type { ShadowSun } from '../../src/core/skyline/shadow.ts';

export type ShadowsAsked = {
  readonly obstacles: readonly Obstacle[];
  readonly suns: readonly ShadowSun[];
  readonly date: string;
  readonly view: {
    readonly zoom: number;
    readonly longitudeDeg: number;
    readonly latitudeDeg: number;
    readonly widthPx: number;
    readonly heightPx: number;
  };
};

export type ShadowsTimed = {
  /** Making the outlines ready, once for all minutes. */
  readonly readyMs: number;
  /** Each minute: its shadows, their path, and the fill, until a pixel of it can be read. */
  readonly minuteMs: readonly number[];
  /** Of the canvas, after each. */
  readonly darkShare: readonly number[];
};

declare global {
  // oxlint-disable-next-line typescript/consistent-type-definitions -- only an interface merges with the browser's own
  interface Window {
    timeShadows: (asked: ShadowsAsked) => ShadowsTimed;
  }
}

window.timeShadows = ({ obstacles, suns, date, view: at }) => {
  const canvas = document.createElement('canvas');
  canvas.width = at.widthPx;
  canvas.height = at.heightPx;
  document.body.replaceChildren(canvas);
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('The browser gives no canvas.');
  const scale = 2 ** at.zoom;
  const view = {
    zoom: at.zoom,
    leftPx: mercatorX(at.longitudeDeg) * scale - at.widthPx / 2,
    topPx: mercatorY(at.latitudeDeg) * scale - at.heightPx / 2,
    widthPx: at.widthPx,
    heightPx: at.heightPx,
  };
  const readyFromMs = performance.now();
  const field = shadowField(obstacles);
  const readyMs = performance.now() - readyFromMs;
  const paint = shadowPainter();
  const minuteMs: number[] = [];
  const darkShare: number[] = [];
  for (const sun of suns) {
    const fromMs = performance.now();
    context.clearRect(0, 0, at.widthPx, at.heightPx);
    paint(context, view, { field, sun, date, darkness: 0.36 });
    context.getImageData(at.widthPx >> 1, at.heightPx >> 1, 1, 1);
    minuteMs.push(performance.now() - fromMs);
    darkShare.push(shareOfDark(context.getImageData(0, 0, at.widthPx, at.heightPx).data));
  }
  return { readyMs, minuteMs, darkShare };
};

const shareOfDark = (pixels: Uint8ClampedArray): number => {
  let dark = 0;
  for (let at = 3; at < pixels.length; at += 4) if ((pixels[at] ?? 0) > 0) dark += 1;
  return dark / (pixels.length / 4);
};
