import type { ShadowGroup } from '../../src/core/skyline/shadow.ts';

/**
 * How often the rings of a group turn round a point, all added up, as a canvas counts them for the
 * nonzero rule: by the angles under which each edge is seen.
 */
export function turnsAt(
  { coordinates, ringEnds }: Pick<ShadowGroup, 'coordinates' | 'ringEnds'>,
  [longitudeDeg, latitudeDeg]: readonly [number, number],
): number {
  let angle = 0;
  let start = 0;
  for (const end of ringEnds) {
    for (let corner = start; corner < end; corner += 1) {
      const next = corner + 1 === end ? start : corner + 1;
      const [x1, y1] = [
        (coordinates[2 * corner] ?? NaN) - longitudeDeg,
        (coordinates[2 * corner + 1] ?? NaN) - latitudeDeg,
      ];
      const [x2, y2] = [
        (coordinates[2 * next] ?? NaN) - longitudeDeg,
        (coordinates[2 * next + 1] ?? NaN) - latitudeDeg,
      ];
      angle += Math.atan2(x1 * y2 - x2 * y1, x1 * x2 + y1 * y2);
    }
    start = end;
  }
  return Math.round(angle / (2 * Math.PI));
}
