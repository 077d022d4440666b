import type { ShadowSun } from '../../core/skyline/shadow.ts';
import { GroundCanvas, type GroundPainter } from './ground-canvas.ts';
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

/**
 * One path for all shadows that let the same share of the light through, filled by the nonzero
 * rule: where they overlap it is no darker than one. The thinnest come first, and a denser one
 * takes their place.
 */
export const paintShadows: GroundPainter<ShadowLook> = (context, view, look) => {
  const { field, sun, date, darkness } = look;
  const shadows = sun && shadowsInView(field, { sun, date, view });
  if (!shadows) return;
  shadows.groups.toReversed().forEach((group, at) => {
    context.beginPath();
    addRings(context, group, view);
    if (at > 0) {
      context.globalCompositeOperation = 'destination-out';
      context.fillStyle = '#000000';
      context.fill('nonzero');
      context.globalCompositeOperation = 'source-over';
    }
    context.fillStyle = `rgb(0 0 0 / ${darkness * (1 - group.passes)})`;
    context.fill('nonzero');
  });
};

export const makeShadowLayer = (): GroundCanvas<ShadowLook> =>
  new GroundCanvas(paintShadows, 'ground-shadows');

export const drawShadowLayer = (layer: GroundCanvas<ShadowLook>, look: ShadowLook): void =>
  layer.show(look);
