import { clockTime } from '../../core/units/civil-time.ts';

const MS_PER_MIN = 60_000;
const MS_PER_HOUR = 3_600_000;

type Range = { readonly startMs: number; readonly endMs: number };

/** Minutes that a key moves a strip's cursor by; null for other keys. */
export function minutesOfKey(key: string, shift: boolean): number | null {
  switch (key) {
    case 'ArrowUp':
    case 'ArrowLeft':
      return shift ? -10 : -1;
    case 'ArrowDown':
    case 'ArrowRight':
      return shift ? 10 : 1;
    case 'PageUp':
      return -60;
    case 'PageDown':
      return 60;
    default:
      return null;
  }
}

/** The whole minute at a share of the strip's height from its top, held inside the range. */
export const minuteAtShare = (share: number, { startMs, endMs }: Range): number =>
  heldMinute(startMs + share * (endMs - startMs), { startMs, endMs });

/** The nearest whole minute inside the range. */
export const heldMinute = (instantMs: number, { startMs, endMs }: Range): number =>
  Math.min(endMs, Math.max(startMs, Math.round(instantMs / MS_PER_MIN) * MS_PER_MIN));

/** Share of the strip's height from its top, 0 to 1. */
export const shareOf = (instantMs: number, { startMs, endMs }: Range): number =>
  Math.min(1, Math.max(0, (instantMs - startMs) / (endMs - startMs)));

/** Instants at which clocks of the zone show a full hour, every so many hours. */
export function fullHours(
  range: Range,
  zone: string,
  everyHours: number,
): readonly { readonly ms: number; readonly text: string }[] {
  const hours: { ms: number; text: string }[] = [];
  const quarterMs = MS_PER_HOUR / 4;
  // Every zone's offset is a multiple of a quarter of an hour.
  for (
    let ms = Math.ceil(range.startMs / quarterMs) * quarterMs;
    ms <= range.endMs;
    ms += quarterMs
  ) {
    const text = clockTime(ms, zone);
    if (text.endsWith(':00') && Number(text.slice(0, 2)) % everyHours === 0)
      hours.push({ ms, text });
  }
  return hours;
}
