import type { Alternative, OtherWay } from '../../../core/plan/alternatives.ts';
import type { Kit } from '../../../core/plan/kit.ts';
import { atanDeg } from '../../../core/units/angle.ts';
import { metres } from '../../ui/figure-text.ts';

/** What another way is called, and what it changes in the picture. */
export function wayText(
  way: OtherWay,
  kit: Kit,
): { readonly name: string; readonly changes: string } {
  switch (way.kind) {
    case 'as-planned':
      return { name: 'As planned', changes: '' };
    case 'stop-down':
      return { name: 'Stopped down, no filter', changes: 'more of the background sharp' };
    case 'open-behind-nd':
      return {
        name: 'Open, behind ND',
        changes: 'background soft; a darker finder, focus before the filter goes on',
      };
    case 'high-speed-sync':
      return {
        name: 'Open, high-speed sync',
        changes: 'background soft without ND; the same loss at every shutter above sync',
      };
    case 'other-modifier':
      return {
        name: `Key through ${kit.modifiers[way.modifierId]?.name ?? 'another modifier'}${way.diffuser ? ', diffuser on' : ''}`,
        changes: 'edge of the shadows and reach',
      };
  }
}

/** '3.1 to 12 m', '3.1 m to infinity' */
export const sharpText = (sharp: Alternative['sharp']): string => {
  if (sharp === null) return '–';
  if (!Number.isFinite(sharp.farM)) return `${metres(sharp.nearM)} to infinity`;
  return `${metres(sharp.nearM).replace(' m', '')} to ${metres(sharp.farM)}`;
};

/** Angle under which the subject sees a light's face. */
export const sourceAngleDeg = (source: {
  readonly sourceDiameterM: number;
  readonly distanceM: number;
}): number => 2 * atanDeg(source.sourceDiameterM / 2 / source.distanceM);

/** Bounds are common practice: a face half as wide as it is far (28°) counts as soft. */
export function softnessText(angleDeg: number): string {
  const word =
    angleDeg < 6 ? 'hard' : angleDeg < 15 ? 'fairly hard' : angleDeg < 28 ? 'half soft' : angleDeg < 45 ? 'soft' : 'very soft'; // prettier-ignore
  return `${Math.round(angleDeg)}°, ${word}`;
}
