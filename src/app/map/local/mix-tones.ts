/** A tone so far from one colour to another, both as '#rrggbb'; the first where one is not. */
export const mixTones = (from: string, to: string, share: number): string => {
  const [one, other] = [channels(from), channels(to)];
  if (one === null || other === null) return from;
  const mixed = one.map((value, index) =>
    Math.round(value + ((other[index] ?? 0) - value) * share),
  );
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
};

const channels = (colour: string): readonly number[] | null => {
  const digits = /^#([0-9a-f]{6})$/i.exec(colour)?.[1];
  return digits === undefined
    ? null
    : [0, 2, 4].map((at) => Number.parseInt(digits.slice(at, at + 2), 16));
};
