import { isNeutral, type SeenLight } from '../../../core/colour/seen-light.ts';
import type { WhiteBalance } from '../../../core/colour/white-balance.ts';
import type { ColourChoice } from '../../../core/plan/colour-choices.ts';
import type { Kit } from '../../../core/plan/kit.ts';
import { inHandText, tenths } from '../../ui/figure-text.ts';

/** '5600 K', '5600 K, tint 12 to magenta' */
export function whiteBalanceText({ kelvin, tint }: WhiteBalance): string {
  const turned = Math.round(tint);
  if (turned === 0) return `${Math.round(kelvin)} K`;
  return `${Math.round(kelvin)} K, tint ${Math.abs(turned)} to ${turned > 0 ? 'magenta' : 'green'}`;
}

/** 'neutral', '134 mired bluer', '12 mired warmer and 7 greener', 'more than 139 mired bluer' */
export function seenText(seen: SeenLight): string {
  if (isNeutral(seen)) return 'neutral';
  const mired = Math.round(seen.warmerMired);
  const green = Math.round(seen.greener);
  const parts = [
    mired === 0
      ? ''
      : `${seen.isBeyondKelvin ? 'more than ' : ''}${Math.abs(mired)} mired ${mired > 0 ? 'warmer' : 'bluer'}`,
    Math.abs(green) < 2 || seen.isBeyondKelvin
      ? ''
      : `${Math.abs(green)} ${green > 0 ? 'greener' : 'more magenta'}`,
  ].filter((part) => part !== '');
  return parts.join(' and ');
}

/** What so many mired look like, our own words for common practice. */
export function miredWords(bluerMired: number): string {
  const size = Math.abs(bluerMired);
  const way = bluerMired > 0 ? 'bluer' : 'warmer';
  if (size < 10) return 'left as it is';
  if (size < 35) return `a touch ${way}`;
  if (size < 80) return `clearly ${way}`;
  if (size < 150) return `strongly ${way}`;
  return bluerMired > 0 ? 'as blue as late dusk' : 'as warm as lamplight';
}

/** '1/2 CTO + 1/2 CTO on the flash, white balance 2910 K' */
export function choiceText({ gelIds, filterId, whiteBalance }: ColourChoice, kit: Kit): string {
  const gels = gelIds.map((id) => kit.gels[id]?.name ?? id);
  const flash = gels.length === 0 ? 'no gel' : `${gels.join(' + ')} on the flash`;
  const lens = filterId === null ? [] : [`${kit.filters[filterId]?.name ?? filterId} on the lens`];
  return [...lens, flash, `white balance ${whiteBalanceText(whiteBalance)}`].join(', ');
}

/** '3 mired off', 'as asked' */
export function missText(missMired: number): string {
  const size = Math.round(Math.abs(missMired));
  if (size === 0) return 'as asked';
  return `${size} mired ${missMired > 0 ? 'bluer' : 'warmer'} than asked`;
}

/** 'costs the flash 1.1 stops: 0.4 in hand' */
export function costText({ gelStops, inHandStops, works }: ColourChoice): string {
  const cost =
    gelStops < 0.05 ? 'costs the flash nothing' : `costs the flash ${tenths(gelStops)} stops`;
  if (inHandStops === null) return cost;
  const left = Number.isFinite(inHandStops) ? inHandText(inHandStops) : 'no light to run out';
  return `${cost}: ${left}${works || inHandStops < 0 ? '' : ', but it does not work for another reason'}`;
}
