import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { page } from 'vitest/browser';
import { render } from 'vitest-browser-react';
import { openLocalMap, type LocalMap } from '../../../../src/app/map/local/local-map.ts';
import type { SpotMapProps } from '../../../../src/app/map/spot-map-props.ts';
import { SpotMap } from '../../../../src/app/map/SpotMap.tsx';
import { mapArchive, type ArchiveContents } from '../../../support/map-archive.ts';
import { solidPng } from '../../../support/solid-png.ts';
import { vectorTile } from '../../../support/vector-tile.ts';

const opened = async (contents: ArchiveContents): Promise<LocalMap> => {
  const map = await openLocalMap('coast.pmtiles', new Blob([await mapArchive(contents)]));
  if (!map.ok) throw new Error(map.problem);
  return map.value;
};

const show = (localMap: LocalMap | null) =>
  render(
    <div style={{ width: 800, height: 600 }}>
      <SpotMap
        spots={[]}
        selectedId={null}
        ringRangeEv={{ minEv: 12, maxEv: 16 }}
        tiles={null}
        localMap={localMap}
        adding={false}
        onSelect={vi.fn<SpotMapProps['onSelect']>()}
        onMove={vi.fn<SpotMapProps['onMove']>()}
        onTurn={vi.fn<SpotMapProps['onTurn']>()}
        onAddAt={vi.fn<SpotMapProps['onAddAt']>()}
        loadOutline={async () => null}
        fitTo={[]}
      />
    </div>,
  );

/** Every colour painted on the local map's tiles, opaque pixels only, and how often. */
const paints = (): ReadonlyMap<string, number> => {
  const found = new Map<string, number>();
  for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.local-tiles canvas')) {
    if (canvas.width === 0) continue;
    const { data } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? {
      data: [],
    };
    for (let at = 0; at < data.length; at += 4) {
      if (data[at + 3] !== 255) continue;
      const colour = [data[at], data[at + 1], data[at + 2]].join(',');
      found.set(colour, (found.get(colour) ?? 0) + 1);
    }
  }
  return found;
};

const whole = [
  [0, 0],
  [4096, 0],
  [4096, 4096],
  [0, 4096],
] as const;

beforeEach(async () => page.viewport(800, 600));
afterEach(() => {
  document.documentElement.removeAttribute('style');
  vi.restoreAllMocks();
});

describe('an archive of pictures', () => {
  test('is drawn tile by tile, closer views from its deepest tiles, and goes when it is taken away', async () => {
    const [red, blue] = [await solidPng(256, [200, 30, 30]), await solidPng(256, [30, 30, 200])];
    const localMap = await opened({
      tiles: [0, 1].flatMap((z) =>
        Array.from({ length: 4 ** z }, (_, index) => ({
          z,
          x: index % 2 ** z,
          y: Math.floor(index / 2 ** z),
          bytes: index === 0 && z === 1 ? blue : red,
        })),
      ),
      tileType: 2,
      metadata: { attribution: 'Harbour office' },
    });
    const screen = await show(localMap);
    // The map opens at zoom 2: each tile of zoom 1 is drawn over four.
    await expect.poll(() => paints().get('200,30,30') ?? 0).toBeGreaterThan(50_000);
    expect(paints().get('30,30,200') ?? 0).toBeGreaterThan(10_000);
    await expect.element(page.getByText('Harbour office')).toBeVisible();
    expect(document.querySelectorAll('.tiles-note')).toHaveLength(0);
    await screen.unmount();
    expect(document.querySelectorAll('.local-tiles')).toHaveLength(0);
  });

  test('a tile that is no picture is said and leaves the others', async () => {
    const good = await solidPng(64, [10, 120, 10]);
    const bad = new TextEncoder().encode('<html><script>window.hacked = 1</script></html>');
    const tiles = Array.from({ length: 16 }, (_, index) => ({
      z: 2,
      x: index % 4,
      y: Math.floor(index / 4),
      bytes: index === 5 ? bad : good,
    }));
    await show(await opened({ tiles, tileType: 2 }));
    await expect.element(page.getByText('parts of the local map could not be read')).toBeVisible();
    await expect.poll(() => paints().get('10,120,10') ?? 0).toBeGreaterThan(10_000);
    expect('hacked' in window).toBe(false);
  });
});

const vector = () =>
  opened({
    tiles: Array.from({ length: 4 }, (_, index) => ({
      z: 1,
      x: index % 2,
      y: Math.floor(index / 2),
      bytes: vectorTile({
        earth: [{ kind: 'polygon', points: whole, tags: { kind: 'earth' } }],
        water: [
          {
            kind: 'polygon',
            points: [
              [0, 0],
              [2048, 0],
              [2048, 4096],
              [0, 4096],
            ],
            tags: { kind: 'ocean' },
          },
        ],
        roads: [
          {
            kind: 'line',
            points: [
              [2100, 0],
              [4000, 4096],
            ],
            tags: { kind: 'highway', name: 'Coast road' },
          },
        ],
      }),
    })),
    tileType: 1,
    tileCompression: 2,
    directoryCompression: 2,
    metadata: { vector_layers: [{ id: 'earth' }, { id: 'water' }, { id: 'roads' }] },
  });

describe('an archive of vector tiles in the open basemap schema', () => {
  test('land and water are drawn in the greys of the theme, and again when it changes', async () => {
    document.documentElement.style.setProperty('--map-land', '#f1f0ec');
    document.documentElement.style.setProperty('--map-sea', '#dfe5ea');
    await show(await vector());
    await expect.poll(() => paints().get('241,240,236') ?? 0).toBeGreaterThan(20_000);
    expect(paints().get('223,229,234') ?? 0).toBeGreaterThan(20_000);

    document.documentElement.style.setProperty('--map-land', '#242422');
    document.documentElement.style.setProperty('--map-sea', '#181c1f');
    await expect.poll(() => paints().get('36,36,34') ?? 0).toBeGreaterThan(20_000);
    expect(paints().get('24,28,31') ?? 0).toBeGreaterThan(20_000);
    expect(paints().get('241,240,236') ?? 0).toBe(0);
  });

  test('taken away while it is being made, it never appears', async () => {
    const screen = await show(await vector());
    await screen.rerender(<p>gone</p>);
    await new Promise((wait) => setTimeout(wait, 200));
    expect(document.querySelectorAll('.local-tiles')).toHaveLength(0);
  });
});
