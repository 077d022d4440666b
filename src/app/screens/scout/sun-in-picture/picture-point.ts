import type { PicturePoint } from '../../../../core/sky/framing.ts';

const STEP = 0.01;
const LONG_STEP = 0.1;

/** Inside the picture, to a thousandth of its side. */
export const roundedPoint = ({ xFraction, yFraction }: PicturePoint): PicturePoint => ({
  xFraction: rounded(xFraction),
  yFraction: rounded(yFraction),
});

const rounded = (fraction: number): number =>
  Math.round(1000 * Math.min(0.5, Math.max(-0.5, fraction))) / 1000 || 0;

/** Where a key moves the point: arrows by a hundredth, with shift by a tenth, Home to the centre; null for other keys. */
export function pointOfKey(
  { xFraction, yFraction }: PicturePoint,
  { key, shiftKey }: { readonly key: string; readonly shiftKey: boolean },
): PicturePoint | null {
  const step = shiftKey ? LONG_STEP : STEP;
  switch (key) {
    case 'ArrowLeft':
      return roundedPoint({ xFraction: xFraction - step, yFraction });
    case 'ArrowRight':
      return roundedPoint({ xFraction: xFraction + step, yFraction });
    case 'ArrowUp':
      return roundedPoint({ xFraction, yFraction: yFraction + step });
    case 'ArrowDown':
      return roundedPoint({ xFraction, yFraction: yFraction - step });
    case 'Home':
      return { xFraction: 0, yFraction: 0 };
    default:
      return null;
  }
}
