const MS_PER_MIN = 60_000;

/**
 * No body's apparent place moves faster. The earth turns 0.2507° a minute, the moon's own way adds
 * 0.011° and her parallax 0.005°; below the horizon, where the refraction of this model fades from
 * 0.64° to nothing over 2°, altitudes are stretched by 1.32.
 */
const FASTEST_DEG_PER_MIN = 0.36;

export type Nearness = { readonly instantMs: number; readonly missDeg: number };

/**
 * Every whole minute of a span at which a body stands within the tolerance of a direction, and
 * each one that is nearer than all before it, `nearestDeg` included. What it answers is what a
 * look at every minute would; from afar it looks again only when the body could have come near.
 */
export function nearestMinutes<Minute extends Nearness>(
  span: { readonly startMs: number; readonly endMs: number },
  look: (instantMs: number) => Minute,
  limits: { readonly toleranceDeg: number; readonly nearestDeg: number },
): readonly Minute[] {
  const minutes: Minute[] = [];
  const { toleranceDeg } = limits;
  let wantedDeg = Math.max(toleranceDeg, limits.nearestDeg);
  for (let instantMs = span.startMs; instantMs < span.endMs;) {
    const minute = look(instantMs);
    if (minute.missDeg <= wantedDeg) {
      minutes.push(minute);
      wantedDeg = Math.max(toleranceDeg, minute.missDeg);
    }
    const farDeg = minute.missDeg - wantedDeg;
    instantMs += MS_PER_MIN * Math.max(1, Math.ceil(farDeg / FASTEST_DEG_PER_MIN));
  }
  return minutes;
}

/** Minutes that follow each other without a gap, in lists of their own. */
export function unbrokenRuns<Minute extends Nearness>(
  minutes: readonly Minute[],
): readonly (readonly Minute[])[] {
  const runs: Minute[][] = [];
  for (const minute of minutes) {
    const last = runs.at(-1);
    if (last?.at(-1)?.instantMs === minute.instantMs - MS_PER_MIN) last.push(minute);
    else runs.push([minute]);
  }
  return runs;
}

/** The first of the nearest; null of none. */
export const nearestOf = <Minute extends Nearness>(minutes: readonly Minute[]): Minute | null =>
  minutes.reduce<Minute | null>(
    (nearest, minute) => (nearest === null || minute.missDeg < nearest.missDeg ? minute : nearest),
    null,
  );
