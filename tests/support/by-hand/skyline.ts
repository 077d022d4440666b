import type { Toward } from './degrees.ts';

/** Height of the skyline at an azimuth: straight between its points, round the compass. */
export function skylineThere(points: readonly Toward[]): (azimuth: number) => number {
  const sorted = points.toSorted((one, other) => one.azimuth - other.azimuth);
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return () => 0;
  const round = [
    { ...last, azimuth: last.azimuth - 360 },
    ...sorted,
    { ...first, azimuth: first.azimuth + 360 },
  ];
  return (azimuth) => {
    const at = ((azimuth % 360) + 360) % 360;
    for (const [place, right] of round.entries()) {
      const left = round[place - 1];
      if (left === undefined || right.azimuth < at) continue;
      const share = (at - left.azimuth) / (right.azimuth - left.azimuth);
      return left.altitude + share * (right.altitude - left.altitude);
    }
    throw new Error(`no skyline at ${azimuth}°`);
  };
}
