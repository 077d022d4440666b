export type PixelBox = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/**
 * For each name the first of its possible boxes that touches no obstacle and no box taken by a
 * name before it, or −1 where none is free.
 */
export const freeBoxes = (
  choices: readonly (readonly PixelBox[])[],
  obstacles: readonly PixelBox[],
): readonly number[] => {
  const taken = [...obstacles];
  return choices.map((boxes) => {
    const free = boxes.findIndex((box) => !taken.some((other) => overlap(box, other)));
    const box = boxes[free];
    if (box) taken.push(box);
    return free;
  });
};

const overlap = (one: PixelBox, other: PixelBox): boolean =>
  one.left < other.right &&
  other.left < one.right &&
  one.top < other.bottom &&
  other.top < one.bottom;
