/** Height of the picture over which a graduated filter goes from clear to its full stops; soft-edged, common practice. [lightingPractice] */
export const GRADUATION_HEIGHT = 0.25;

export type Graduation = {
  /** Above its edge. */
  readonly stops: number;
  /** Where its middle lies, fraction of the picture's height above its centre. */
  readonly fraction: number;
};

/** Stops that a graduated filter takes at a height of the picture, 0 below its edge: a smooth step. */
export const graduatedStops = ({ stops, fraction }: Graduation, yFraction: number): number => {
  const t = (yFraction - fraction) / GRADUATION_HEIGHT + 0.5;
  const held = Math.min(1, Math.max(0, t));
  return stops * held * held * (3 - 2 * held);
};
