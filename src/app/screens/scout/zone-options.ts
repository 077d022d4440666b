import { utcOffsetText } from '../../../core/units/civil-time.ts';

/** Every zone this browser knows, with the given ones among them, in the alphabet's order. */
export function zoneOptions(
  among: readonly string[],
): readonly { readonly value: string; readonly text: string }[] {
  return [...new Set([...Intl.supportedValuesOf('timeZone'), ...among])]
    .toSorted()
    .map((zone) => ({ value: zone, text: zone.replaceAll('_', ' ') }));
}

/** 'Europe/Rome, UTC+2' */
export const zoneText = (zone: string, atMs: number): string =>
  `${zone.replaceAll('_', ' ')}, ${utcOffsetText(atMs, zone)}`;
