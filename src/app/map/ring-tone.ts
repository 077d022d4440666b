export type EvRange = { readonly minEv: number; readonly maxEv: number };

type Rgb = readonly [number, number, number];

/** One blue from dark to near white, evenly spaced in lightness. */
const DARK: Rgb = [18, 46, 84];
const MIDDLE: Rgb = [99, 138, 181];
const LIGHT: Rgb = [245, 247, 250];

/** Shade of a sky luminance given as EV; null for ground (NaN). Outside the range the end tones. */
export const ringTone = (ev: number, range: EvRange): string | null =>
  Number.isNaN(ev) ? null : toneAt(shareOf(ev, range));

/** The tones in order, dark first, as a legend draws them. */
export const toneSteps = (count: number): readonly string[] =>
  Array.from({ length: count }, (_, index) => toneAt(index / (count - 1)));

const shareOf = (ev: number, { minEv, maxEv }: EvRange): number =>
  maxEv > minEv ? Math.min(1, Math.max(0, (ev - minEv) / (maxEv - minEv))) : 0.5;

const toneAt = (share: number): string =>
  share < 0.5 ? mix(DARK, MIDDLE, share * 2) : mix(MIDDLE, LIGHT, share * 2 - 1);

const mix = (from: Rgb, to: Rgb, share: number): string => {
  const channel = (index: 0 | 1 | 2): number =>
    Math.round(from[index] + (to[index] - from[index]) * share);
  return `rgb(${channel(0)}, ${channel(1)}, ${channel(2)})`;
};
