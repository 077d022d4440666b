import { StrictMode } from 'react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';
import type { MapSpot } from '../../../src/app/map/map-spot.ts';
import { RingLegend } from '../../../src/app/map/RingLegend.tsx';
import type { SpotMapProps } from '../../../src/app/map/spot-map-props.ts';
import { SpotMap } from '../../../src/app/map/SpotMap.tsx';

const flatRing = Array.from({ length: 72 }, (_, index) => (index < 18 ? Number.NaN : 14));

const pier: MapSpot = {
  id: 'pier',
  name: 'Pier head',
  point: { latitudeDeg: 45.6503, longitudeDeg: 13.7571 },
  bearingDeg: 300,
  horizontalFovDeg: 54.4,
  ringEv: flatRing,
};
const terrace: MapSpot = {
  ...pier,
  id: 'terrace',
  name: 'Lighthouse terrace',
  point: { latitudeDeg: 45.656, longitudeDeg: 13.766 },
  bearingDeg: 25,
};

const calls = () => ({
  onSelect: vi.fn<SpotMapProps['onSelect']>(),
  onMove: vi.fn<SpotMapProps['onMove']>(),
  onTurn: vi.fn<SpotMapProps['onTurn']>(),
  onAddAt: vi.fn<SpotMapProps['onAddAt']>(),
});

const propsFor = (changes: Partial<SpotMapProps> = {}): SpotMapProps => {
  const spots = changes.spots ?? [pier, terrace];
  return {
    spots,
    selectedId: 'pier',
    ringRangeEv: { minEv: 12, maxEv: 16 },
    tiles: null,
    adding: false,
    ...calls(),
    loadOutline: async () => null,
    fitTo: spots.map(({ point }) => point),
    ...changes,
  };
};

const show = (changes: Partial<SpotMapProps> = {}) =>
  render(
    <div style={{ width: 900, height: 640 }}>
      <SpotMap {...propsFor(changes)} />
    </div>,
  );

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (!found) throw new Error(`nothing on the page is ${selector}`);
  return found;
};

const centreOf = (element: Element): { readonly x: number; readonly y: number } => {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
};

/** A real press, three moves and a release, from the middle of the element by so many pixels. */
const dragBy = async (element: Element, x: number, y: number): Promise<void> => {
  const view = find('.spot-map-view');
  const from = centreOf(element);
  const frame = view.getBoundingClientRect();
  await userEvent.dragAndDrop(view, view, {
    sourcePosition: { x: from.x - frame.left, y: from.y - frame.top },
    targetPosition: { x: from.x + x - frame.left, y: from.y + y - frame.top },
    force: true,
    steps: 3,
  });
};

beforeEach(async () => page.viewport(900, 640));
afterEach(() => vi.restoreAllMocks());

test('a map mounted twice in strict mode is one map with one set of spots', async () => {
  await render(
    <StrictMode>
      <div style={{ width: 900, height: 640 }}>
        <SpotMap {...propsFor()} />
      </div>
    </StrictMode>,
  );
  await expect.element(page.getByRole('button', { name: 'Pier head' })).toBeVisible();
  expect(document.querySelectorAll('.leaflet-map-pane')).toHaveLength(1);
  expect(document.querySelectorAll('.spot')).toHaveLength(2);
  expect(document.querySelectorAll('.graticule-labels')).toHaveLength(1);
});

test('a spot taken out of the list goes from the map, and the map goes with its component', async () => {
  const screen = await show();
  await screen.rerender(<SpotMap {...propsFor({ spots: [terrace], selectedId: null })} />);
  await expect.element(page.getByRole('button', { name: 'Lighthouse terrace' })).toBeVisible();
  expect(document.querySelectorAll('.spot')).toHaveLength(1);
  await screen.unmount();
  expect(document.querySelectorAll('.spot, .leaflet-map-pane')).toHaveLength(0);
});

describe('by pointer', () => {
  test('dragging the selected spot moves it once, and the figure keeps under the hand', async () => {
    const moves = calls();
    await show(moves);
    const ring = find('.selected .spot-button');
    const before = centreOf(ring);
    await dragBy(ring, 60, 40);
    expect(moves.onMove).toHaveBeenCalledTimes(1);
    const [id, point] = moves.onMove.mock.calls[0] ?? [];
    expect(id).toBe('pier');
    expect(point?.longitudeDeg).toBeGreaterThan(pier.point.longitudeDeg);
    expect(point?.latitudeDeg).toBeLessThan(pier.point.latitudeDeg);
    expect(centreOf(ring).x - before.x).toBeCloseTo(60, 0);
    expect(centreOf(ring).y - before.y).toBeCloseTo(40, 0);
    expect(moves.onTurn).not.toHaveBeenCalled();
    expect(moves.onSelect).not.toHaveBeenCalled();
  });

  test('dragging the handle to due east of the spot turns the camera to 90°, once', async () => {
    const moves = calls();
    await show(moves);
    const handle = find('.selected .spot-handle');
    const [spot, grip] = [centreOf(find('.selected .spot-button')), centreOf(handle)];
    await dragBy(handle, spot.x + 120 - grip.x, spot.y - grip.y);
    expect(moves.onTurn).toHaveBeenCalledExactlyOnceWith('pier', 90);
    expect(handle.getAttribute('aria-valuetext')).toBe('90 degrees, east');
    expect(moves.onMove).not.toHaveBeenCalled();
  });

  test('a press on another spot that pans the map neither moves nor selects it', async () => {
    const moves = calls();
    await show(moves);
    const ring = find('.spot:not(.selected) .spot-button');
    const before = centreOf(ring);
    await dragBy(ring, -80, 50);
    await vi.waitFor(() => expect(Math.abs(centreOf(ring).x - before.x)).toBeGreaterThan(40));
    expect(moves.onMove).not.toHaveBeenCalled();
    expect(moves.onSelect).not.toHaveBeenCalled();
  });

  test('a click selects, and while adding a click on the ground adds there', async () => {
    const moves = calls();
    await show({ ...moves, adding: true });
    await userEvent.click(page.getByRole('button', { name: 'Lighthouse terrace' }));
    expect(moves.onSelect).toHaveBeenCalledExactlyOnceWith('terrace');
    expect(moves.onAddAt).not.toHaveBeenCalled();
    await userEvent.click(find('.spot-map-view'), { position: { x: 450, y: 600 } });
    expect(moves.onAddAt).toHaveBeenCalledTimes(1);
    expect(moves.onAddAt.mock.calls[0]?.[0].latitudeDeg).toBeLessThan(pier.point.latitudeDeg);
  });

  test('new props during a drag do not take the spot out of the hand', async () => {
    const moves = calls();
    const screen = await show(moves);
    const ring = find('.selected .spot-button');
    const before = centreOf(ring);
    const point = { pointerId: 1, isPrimary: true, button: 0, bubbles: true };
    vi.spyOn(ring, 'setPointerCapture').mockImplementation(() => undefined);
    const at = (x: number) => ({ ...point, clientX: before.x + x, clientY: before.y });
    ring.dispatchEvent(new PointerEvent('pointerdown', at(0)));
    ring.dispatchEvent(new PointerEvent('pointermove', at(50)));
    await screen.rerender(
      <div style={{ width: 900, height: 640 }}>
        <SpotMap {...propsFor({ ...moves, ringRangeEv: { minEv: 10, maxEv: 18 } })} />
      </div>,
    );
    expect(centreOf(ring).x - before.x).toBeCloseTo(50, 0);
    ring.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
    expect(centreOf(ring).x - before.x).toBeCloseTo(0, 0);
    expect(moves.onMove).not.toHaveBeenCalled();
  });
});

describe('by keyboard', () => {
  test('arrows turn the camera by 1°, with Shift by 10°, over north too', async () => {
    const moves = calls();
    await show({ ...moves, spots: [{ ...pier, bearingDeg: 355 }] });
    const slider = page.getByRole('slider', { name: 'Camera bearing, Pier head' });
    find('.spot-handle').focus();
    await userEvent.keyboard('{ArrowRight}');
    expect(moves.onTurn).toHaveBeenLastCalledWith('pier', 356);
    await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}');
    expect(moves.onTurn).toHaveBeenLastCalledWith('pier', 6);
    await userEvent.keyboard('{ArrowLeft}');
    expect(moves.onTurn).toHaveBeenLastCalledWith('pier', 5);
    await expect.element(slider).toHaveAttribute('aria-valuenow', '5');
    await expect.element(slider).toHaveAttribute('aria-valuetext', '5 degrees, north');
  });

  test('arrows move a spot by 1 m, with Shift by 10 m, and Enter selects it', async () => {
    const moves = calls();
    await show(moves);
    find('.spot:not(.selected) .spot-button').focus();
    await userEvent.keyboard('{Enter}');
    expect(moves.onSelect).toHaveBeenCalledExactlyOnceWith('terrace');
    await userEvent.keyboard('{ArrowUp}');
    await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
    expect(moves.onMove).toHaveBeenCalledTimes(2);
    const last = moves.onMove.mock.lastCall?.[1].latitudeDeg ?? Number.NaN;
    // A degree of latitude is 111,140 m at 45.7° (WGS 84); places are kept to a centimetre.
    expect(Math.abs((last - terrace.point.latitudeDeg) * 111_140 - 11)).toBeLessThan(0.05);
  });

  test('while adding, Enter on the map gives the place at its middle', async () => {
    const moves = calls();
    await show({ ...moves, adding: true, spots: [pier], selectedId: null });
    find('.spot-map-view').focus();
    await userEvent.keyboard('{Enter}');
    const [point] = moves.onAddAt.mock.calls[0] ?? [];
    // The middle of the view lies on the only spot, to a pixel at this zoom: 2 m.
    expect(Math.abs((point?.latitudeDeg ?? 0) - pier.point.latitudeDeg)).toBeLessThan(2e-5);
  });
});

const requests = (): readonly string[] =>
  performance.getEntriesByType('resource').map(({ name }) => name);

describe('the base map', () => {
  test('without tiles nothing is asked of any network', async () => {
    performance.clearResourceTimings();
    const asked = vi.spyOn(window, 'fetch');
    await show();
    await userEvent.click(page.getByRole('button', { name: 'Zoom out' }));
    expect(asked).not.toHaveBeenCalled();
    expect(document.querySelectorAll('.spot-map img')).toHaveLength(0);
    expect(requests().filter((address) => new URL(address).origin !== location.origin)).toEqual([]);
    await expect.element(page.getByText('Natural Earth, public domain')).toBeVisible();
    await expect.element(page.getByText('the map outline could not be read')).toBeVisible();
  });

  test('tiles that do not come are said in one line, over the outline, with their credit', async () => {
    const tiles = { url: '/no-such-tiles/{z}/{x}/{y}.png', attribution: '© <b>map</b> makers' };
    await show({ tiles });
    await expect.element(page.getByText('map tiles did not answer')).toBeVisible();
    await expect.element(page.getByText('© <b>map</b> makers')).toBeVisible();
    expect(document.querySelectorAll('.outline-tiles canvas').length).toBeGreaterThan(0);
  });

  test('a tile address that no map can fill in is said in the same line', async () => {
    await show({ tiles: { url: '/tiles/{row}/{z}.png', attribution: '' } });
    await expect.element(page.getByText('map tiles did not answer')).toBeVisible();
  });

  test('land is drawn where the outline has it and the sea is left clear', async () => {
    const [west, east, south, north] = [13.74, 13.7615, 45.6, 45.7];
    const land = [
      [west, south],
      [east, south],
      [east, north],
      [west, north],
      [west, south],
    ];
    await show({
      selectedId: null,
      loadOutline: async () => ({
        land: { type: 'MultiPolygon', coordinates: [[land]] },
        borders: { type: 'MultiLineString', coordinates: [] },
      }),
    });
    await expect.element(page.getByText('outline only, coarse at this scale')).toBeVisible();
    await vi.waitFor(() => {
      expect(paintedUnder(find('.spot:has([aria-label="Pier head"]) .spot-button'))).toBe(255);
      expect(paintedUnder(find('.spot:has([aria-label="Lighthouse terrace"]) .spot-button'))).toBe(
        0,
      );
    });
  });
});

/** Opacity, 0 to 255, of the outline canvas a little off the middle of the element. */
const paintedUnder = (element: Element): number => {
  const { x, y } = centreOf(element);
  for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.outline-tiles canvas')) {
    const { left, top, width } = canvas.getBoundingClientRect();
    const [column, row] = [x + 7 - left, y + 7 - top];
    if (column < 0 || row < 0 || column >= width || row >= width) continue;
    const scale = canvas.width / width;
    return canvas.getContext('2d')?.getImageData(column * scale, row * scale, 1, 1).data[3] ?? -1;
  }
  return -1;
};

test('a map taken away in the middle of a zoom leaves nothing behind that fails', async () => {
  const failures: unknown[] = [];
  const note = (event: ErrorEvent): void => void failures.push(event.error);
  window.addEventListener('error', note);
  const screen = await show();
  await userEvent.click(page.getByRole('button', { name: 'Zoom out' }));
  await screen.unmount();
  await new Promise((later) => setTimeout(later, 400));
  window.removeEventListener('error', note);
  expect(failures).toEqual([]);
});

test('a spot chosen in a list out of the view is brought into it, with its handle', async () => {
  const far = { ...terrace, point: { latitudeDeg: 45.7, longitudeDeg: 13.9 } };
  const fitTo = [pier.point];
  const screen = await show({ spots: [pier, far], fitTo });
  const frame = find('.spot-map-view').getBoundingClientRect();
  await screen.rerender(
    <div style={{ width: 900, height: 640 }}>
      <SpotMap {...propsFor({ spots: [pier, far], fitTo, selectedId: 'terrace' })} />
    </div>,
  );
  await vi.waitFor(() => {
    for (const part of ['.selected .spot-button', '.selected .spot-handle']) {
      const { x, y } = centreOf(find(part));
      expect(x > frame.left && x < frame.right && y > frame.top && y < frame.bottom).toBe(true);
    }
  });
});

test('markup in the name of a spot stays text', async () => {
  const name = '<img src=x onerror="window.broken=1"><b>Quay</b>';
  await show({ spots: [{ ...pier, name }] });
  expect(find('.spot-name').textContent).toBe(name);
  expect(find('.spot-button').getAttribute('aria-label')).toBe(name);
  expect(document.querySelectorAll('.spot-map img, .spot-map b')).toHaveLength(0);
});

test('spots on both sides of the date line stand side by side', async () => {
  const spots = [
    { ...pier, point: { latitudeDeg: -16.8, longitudeDeg: 179.9 } },
    { ...terrace, point: { latitudeDeg: -16.8, longitudeDeg: -179.9 } },
  ];
  const moves = calls();
  await show({ ...moves, spots });
  const west = centreOf(find('.selected .spot-button'));
  const east = centreOf(find('.spot:not(.selected) .spot-button'));
  expect(east.x - west.x).toBeGreaterThan(100);
  expect(east.x - west.x).toBeLessThan(900);
  await dragBy(find('.selected .spot-button'), east.x - west.x + 30, 100);
  const longitudeDeg = moves.onMove.mock.calls[0]?.[1].longitudeDeg ?? Number.NaN;
  expect(longitudeDeg).toBeGreaterThan(-179.9);
  expect(longitudeDeg).toBeLessThan(-179.5);
});

test('a spot beyond 85° stands on the edge of the map and keeps its place when turned', async () => {
  const moves = calls();
  const spot = { ...pier, point: { latitudeDeg: 89, longitudeDeg: 10 } };
  await show({ ...moves, spots: [spot] });
  find('.spot-handle').focus();
  await userEvent.keyboard('{ArrowRight}');
  expect(moves.onTurn).toHaveBeenCalledExactlyOnceWith('pier', 301);
  find('.spot-button').focus();
  await userEvent.keyboard('{ArrowDown}');
  expect(moves.onMove.mock.lastCall?.[1].latitudeDeg).toBeCloseTo(89, 4);
});

test('sectors wholly on the ground are no shade of the sky', async () => {
  await show();
  expect(document.querySelectorAll('.selected .spot-ring .ground')).toHaveLength(18);
  expect(document.querySelectorAll('.selected .spot-ring .sky')).toHaveLength(54);
});

test('everything to press is at least 44 px, on a phone too', async () => {
  await page.viewport(390, 844);
  await render(
    <div style={{ width: 390, height: 700 }}>
      <SpotMap {...propsFor()} />
    </div>,
  );
  for (const target of document.querySelectorAll('.spot-map button, .spot-handle:not([hidden])')) {
    const { width, height } = target.getBoundingClientRect();
    expect(Math.min(width, height), target.ariaLabel ?? '').toBeGreaterThanOrEqual(44);
  }
  const frame = find('.spot-map-view').getBoundingClientRect();
  const handle = centreOf(find('.selected .spot-handle'));
  expect(handle.x).toBeGreaterThan(frame.left);
});

test('panning moves nothing of a spot but the sheet it lies on', async () => {
  await show();
  await vi.waitFor(() => expect(document.querySelectorAll('.spot')).toHaveLength(2));
  const changes: MutationRecord[] = [];
  const watch = new MutationObserver((records) => changes.push(...records));
  for (const spot of document.querySelectorAll('.spot'))
    watch.observe(spot.querySelector('.spot-ring') ?? spot, { childList: true, subtree: true });
  const ring = find('.selected .spot-button');
  const before = centreOf(ring);
  await userEvent.dragAndDrop(find('.spot-map-view'), find('.spot-map-view'), {
    sourcePosition: { x: 700, y: 500 },
    targetPosition: { x: 600, y: 450 },
  });
  await vi.waitFor(() => expect(before.x - centreOf(ring).x).toBeGreaterThan(50));
  expect(changes).toEqual([]);
  watch.disconnect();
});

test('the legend says what the shades are, when, and from which EV to which', async () => {
  await render(<RingLegend ringRangeEv={{ minEv: 12, maxEv: 15.53 }} atTime="20:06" />);
  await expect
    .element(page.getByText('sky brightness round each spot, 8 to 20° up, at 20:06'))
    .toBeVisible();
  await expect.element(page.getByText('EV 12 to 15.5')).toBeVisible();
});
