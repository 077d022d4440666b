import type { Alternative, OtherWay } from '../../../core/plan/alternatives.ts';
import type { Kit } from '../../../core/plan/kit.ts';
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
    case 'bounced-key':
      return {
        name: `Key off a white wall, ${Math.round(way.reflectance * 100)} % of the light`,
        changes: 'soft and broad; the wall’s colour comes with it',
      };
    case 'warm-gels':
      return {
        name: `${kit.gels[way.gelId]?.name ?? 'Warm gel'} on every light, ${way.whiteBalanceKelvin} K`,
        changes: 'skin as before, sky and ground turn blue',
      };
  }
}

/** '3.1 to 12 m', '3.1 m to infinity' */
export const sharpText = (sharp: Alternative['sharp']): string => {
  if (sharp === null) return '–';
  if (!Number.isFinite(sharp.farM)) return `${metres(sharp.nearM)} to infinity`;
  return `${metres(sharp.nearM).replace(' m', '')} to ${metres(sharp.farM)}`;
};

/** What comes along and what may stay. */
export const carryText = ({ more, less }: Alternative['carry']): string =>
  [
    ...(more.length > 0 ? [`plus ${more.join(', ')}`] : []),
    ...(less.length > 0 ? [`less ${less.join(', ')}`] : []),
  ].join('; ') || 'the same';
