import type { Patch } from '../../../core/sky/patch.ts';

/** '10 × 10 % of the picture, 25 % right of the centre, 3 % above it' */
export function patchText({ xFraction, yFraction, widthFraction, heightFraction }: Patch): string {
  const across = percent(xFraction) === 0 ? 'on the centre line' : `${percent(xFraction)} % ${xFraction > 0 ? 'right' : 'left'} of the centre`; // prettier-ignore
  const up = percent(yFraction) === 0 ? 'level with it' : `${percent(yFraction)} % ${yFraction > 0 ? 'above' : 'below'} it`; // prettier-ignore
  return `${percent(widthFraction)} × ${percent(heightFraction)} % of the picture, ${across}, ${up}`;
}

const percent = (fraction: number): number => Math.round(100 * Math.abs(fraction));
