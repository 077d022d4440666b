import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page } from 'vitest/browser';
import { render } from 'vitest-browser-react';
import { TILE_WAIT_MS } from '../../../src/app/map/raster-layer.ts';
import type { SpotMapProps } from '../../../src/app/map/spot-map-props.ts';
import { SpotMap } from '../../../src/app/map/SpotMap.tsx';
import { tileAnswersText } from '../../../src/app/map/use-tile-answers.ts';

const show = () =>
  render(
    <div style={{ width: 600, height: 400 }}>
      <SpotMap
        spots={[]}
        selectedId={null}
        ringRangeEv={{ minEv: 12, maxEv: 16 }}
        tiles={{ url: 'https://tiles.invalid/{z}/{x}/{y}.png', attribution: 'Nobody' }}
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

/** From now on no picture asked for is ever sent, nor refused; the answer is what was asked. */
const silentServer = (): { readonly asked: HTMLImageElement[] } => {
  const asked: HTMLImageElement[] = [];
  vi.spyOn(HTMLImageElement.prototype, 'src', 'set').mockImplementation(function ask(
    this: HTMLImageElement,
  ) {
    asked.push(this);
  });
  return { asked };
};

const note = (): string => document.querySelector('.tiles-note')?.textContent ?? '';

beforeEach(async () => {
  await page.viewport(600, 400);
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

test('a server that never answers is called slow after some seconds and given up in time', async () => {
  const { asked } = silentServer();
  await show();
  await vi.waitFor(() => expect(asked.length).toBeGreaterThan(3));
  expect(note()).toBe('');
  await vi.advanceTimersByTimeAsync(5100);
  await vi.waitFor(() => expect(note()).toBe('map tiles are slow to answer'));
  await vi.advanceTimersByTimeAsync(TILE_WAIT_MS);
  await vi.waitFor(() => expect(note()).toBe('map tiles did not answer'));
  expect(document.querySelectorAll('.leaflet-tile[src]')).toHaveLength(0);
});

test('one that answers some and not others is said to, and all well is no note', async () => {
  const { asked } = silentServer();
  await show();
  await vi.waitFor(() => expect(asked.length).toBeGreaterThan(3));
  const [first, ...others] = asked.filter((tile) => tile.isConnected);
  first?.dispatchEvent(new Event('error'));
  await vi.waitFor(() => expect(note()).toBe('map tiles did not answer'));
  for (const tile of others) tile.dispatchEvent(new Event('load'));
  await vi.waitFor(() => expect(note()).toBe('some map tiles did not answer'));
  expect(tileAnswersText({ loaded: 12, failed: 0, slow: false })).toBeNull();
});

test('an answer after the tile was given up changes nothing', async () => {
  const { asked } = silentServer();
  await show();
  await vi.waitFor(() => expect(asked.length).toBeGreaterThan(3));
  await vi.advanceTimersByTimeAsync(TILE_WAIT_MS + 100);
  await vi.waitFor(() => expect(note()).toBe('map tiles did not answer'));
  asked[0]?.dispatchEvent(new Event('load'));
  await vi.advanceTimersByTimeAsync(10);
  expect(note()).toBe('map tiles did not answer');
});

test('what a server learns of the page is its origin, nothing of what is looked at', async () => {
  const { asked } = silentServer();
  await show();
  await vi.waitFor(() => expect(asked.length).toBeGreaterThan(3));
  for (const tile of asked) expect(tile.referrerPolicy).toBe('strict-origin-when-cross-origin');
});
