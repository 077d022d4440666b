import type { Position } from 'geojson';
import { describe, expect, test } from 'vitest';
import { loadOutline } from '../../src/atlas/outline.ts';
import type { Outline } from '../../src/atlas/outline.ts';
import { atlasFilesOfTheBuild } from '../support/atlas-files.ts';

const readAtlas = atlasFilesOfTheBuild();

/** Crossings of the outline's edges with a ray to the east: odd on land. */
const onLand = (outline: Outline, longitudeDeg: number, latitudeDeg: number): boolean => {
  const edges = outline.land.coordinates
    .flat()
    .flatMap((ring) =>
      ring.slice(1).map((end, index): readonly [Position, Position] => [ring[index] ?? end, end]),
    );
  return (
    edges.filter(([[x1 = 0, y1 = 0], [x2 = 0, y2 = 0]]) => {
      if (y1 > latitudeDeg === y2 > latitudeDeg) return false;
      return longitudeDeg < x1 + ((latitudeDeg - y1) / (y2 - y1)) * (x2 - x1);
    }).length %
      2 ===
    1
  );
};

describe.each(['50m', '10m'] as const)('the outline at 1 : %s', (detail) => {
  test.each([
    { where: 'Vienna', at: [16.37, 48.21], land: true },
    { where: 'Alice Springs', at: [133.88, -23.7], land: true },
    { where: 'Manaus', at: [-60.02, -3.12], land: true },
    { where: 'the open Adriatic', at: [15.0, 43.0], land: false },
    { where: 'the open Pacific', at: [-140, 0], land: false },
    { where: 'the Southern Ocean', at: [100, -55], land: false },
  ] as const)('has $where on the right side of the coast', async ({ at, land }) => {
    const outline = await loadOutline(readAtlas, detail);
    expect(onLand(outline, at[0], at[1])).toBe(land);
  });

  test('stays on the globe and has borders', async () => {
    const outline = await loadOutline(readAtlas, detail);
    const positions = [...outline.land.coordinates.flat(2), ...outline.borders.coordinates.flat()];
    expect(positions.every(([x = 999, y = 999]) => Math.abs(x) <= 180 && Math.abs(y) <= 90)).toBe(
      true,
    );
    // Between Italy and Austria, somewhere near the Brenner (11.5° E, 47.0° N).
    const nearest = Math.min(
      ...outline.borders.coordinates
        .flat()
        .map(([x = 999, y = 999]) => Math.hypot(x - 11.5, y - 47.0)),
    );
    expect(nearest).toBeLessThan(0.3);
  });
});

test('the finer outline has more coast', async () => {
  const [coarse, fine] = await Promise.all([
    loadOutline(readAtlas, '50m'),
    loadOutline(readAtlas, '10m'),
  ]);
  expect(fine.land.coordinates.flat(2).length).toBeGreaterThan(
    3 * coarse.land.coordinates.flat(2).length,
  );
});
