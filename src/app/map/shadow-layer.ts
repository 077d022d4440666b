import type { Shadows, ShadowSun } from '../../core/skyline/shadow.ts';
import { GroundCanvas, type GroundPainter, type GroundView } from './ground-canvas.ts';
import { addRings, shadowsInView, type ShadowField } from './shadow-path.ts';

export type ShadowLook = {
  readonly field: ShadowField;
  /** Null while there is no place to see the sun from. */
  readonly sun: ShadowSun | null;
  /** Civil date, for the leaves. */
  readonly date: string;
  /** How dark a whole shadow is over the map, 0 to 1. */
  readonly darkness: number;
};

/** Corners from which on a low sun is drawn in coarser pixels. */
const CROWDED = 8000;

/**
 * How many pixels of the map one of a crowded shadow is wide. The sun's half degree blurs the far
 * end of a shadow ten metres high by 1.3 m at 4° and by 5 m at 1°; long edges are slow to fill.
 */
export const shadowPixels = (corners: number, sunAltitudeDeg: number): 1 | 2 | 4 => {
  if (corners < CROWDED || sunAltitudeDeg >= 4) return 1;
  return sunAltitudeDeg >= 1.5 ? 2 : 4;
};

/** Paints the shadows of a view; how dark a whole one is over the map is the canvas' own opacity. */
export const shadowPainter = (): GroundPainter<ShadowLook> => {
  const coarse = document.createElement('canvas');
  return (context, view, look) => {
    const { field, sun, date, darkness } = look;
    context.canvas.style.opacity = String(darkness);
    const shadows = sun && shadowsInView(field, { sun, date, view });
    if (!shadows) return;
    const corners = shadows.groups.reduce((sum, group) => sum + group.coordinates.length / 2, 0);
    const pixels = shadowPixels(corners, sun.apparentAltitudeDeg);
    if (pixels === 1) return paintGroups(context, view, shadows.groups);
    coarse.width = Math.ceil(view.widthPx / pixels);
    coarse.height = Math.ceil(view.heightPx / pixels);
    const small = coarse.getContext('2d');
    if (!small) return;
    small.scale(1 / pixels, 1 / pixels);
    paintGroups(small, view, shadows.groups);
    context.drawImage(coarse, 0, 0, coarse.width * pixels, coarse.height * pixels);
  };
};

/**
 * One path for all shadows that let the same share of the light through, filled by the nonzero
 * rule: where they overlap it is no darker than one. The thinnest come first, and a denser one
 * takes their place.
 */
function paintGroups(
  context: CanvasRenderingContext2D,
  view: GroundView,
  groups: Shadows['groups'],
): void {
  context.fillStyle = '#000000';
  groups.toReversed().forEach((group, at) => {
    context.beginPath();
    addRings(context, group, view);
    if (at > 0 && group.passes > 0) {
      context.globalAlpha = 1;
      context.globalCompositeOperation = 'destination-out';
      context.fill('nonzero');
      context.globalCompositeOperation = 'source-over';
    }
    context.globalAlpha = 1 - group.passes;
    context.fill('nonzero');
  });
  context.globalAlpha = 1;
}

/** No finer than the map's own pixels: no edge of a shadow is that sharp. */
export const makeShadowLayer = (): GroundCanvas<ShadowLook> =>
  new GroundCanvas(shadowPainter(), { className: 'ground-shadows', mostDensity: 1 });

export const drawShadowLayer = (layer: GroundCanvas<ShadowLook>, look: ShadowLook): void =>
  layer.show(look);
