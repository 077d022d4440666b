import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';
import type { MapSpot } from '../../../src/app/map/map-spot.ts';
import type { SpotMapProps } from '../../../src/app/map/spot-map-props.ts';
import { SpotMap } from '../../../src/app/map/SpotMap.tsx';
import { look } from '../../../src/app/state/view.ts';
import { declinationAt } from '../../../src/atlas/declination.ts';
import { groundVector } from '../../../src/core/place/geodesy.ts';
import type { GeoPoint } from '../../../src/core/place/geo-point.ts';

const pier: MapSpot = {
  id: 'pier',
  name: 'Pier head',
  point: { latitudeDeg: 45.6503, longitudeDeg: 13.7571 },
  bearingDeg: 300,
  horizontalFovDeg: 54.4,
  ringEv: null,
};
const terrace: MapSpot = {
  ...pier,
  id: 'terrace',
  name: 'Lighthouse terrace',
  point: { latitudeDeg: 45.656, longitudeDeg: 13.766 },
};

const show = (changes: Partial<SpotMapProps> = {}) =>
  render(
    <div style={{ width: 900, height: 640 }}>
      <SpotMap
        spots={[pier, terrace]}
        selectedId="pier"
        ringRangeEv={{ minEv: 12, maxEv: 16 }}
        tiles={null}
        adding={false}
        onSelect={vi.fn<SpotMapProps['onSelect']>()}
        onMove={vi.fn<SpotMapProps['onMove']>()}
        onTurn={vi.fn<SpotMapProps['onTurn']>()}
        onAddAt={vi.fn<SpotMapProps['onAddAt']>()}
        declinationAt={(point) => declinationAt(point, '2027-05-14')}
        loadOutline={async () => null}
        fitTo={[pier.point, terrace.point]}
        {...changes}
      />
    </div>,
  );

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (!found) throw new Error(`nothing on the page is ${selector}`);
  return found;
};

/** The middle of a spot's dot, from the map's corner. */
const dotOf = (name: string): { readonly x: number; readonly y: number } => {
  const { left, top, width, height } = find(
    `.spot-button[aria-label="${name}"]`,
  ).getBoundingClientRect();
  const view = find('.spot-map-view').getBoundingClientRect();
  return { x: left + width / 2 - view.left, y: top + height / 2 - view.top };
};

/** '412 m, …' or '3.42 km' in metres. */
const lengthM = (text: string): number => {
  const [, number, unit] = /^([\d.]+) (k?m)/.exec(text) ?? [];
  return Number(number) * (unit === 'km' ? 1000 : 1);
};

const measured = () => page.getByRole('region', { name: 'Measure' });
const figure = (name: string): string => find(`[data-figure="${name}"]`).textContent ?? '';

beforeEach(async () => page.viewport(900, 640));
afterEach(() => {
  look({ shownPlace: null });
  vi.restoreAllMocks();
});

describe('measuring', () => {
  // WGS 84 by the project's geodesic, itself tested against Karney's test set.
  const way = groundVector(pier.point, terrace.point);

  test('from one spot to another by pointer: distance and true bearing to the spots themselves, and the compass', async () => {
    const onSelect = vi.fn<SpotMapProps['onSelect']>();
    await show({ onSelect });
    await page.getByRole('button', { name: 'Measure distance and bearing' }).click();
    await expect.element(measured()).toHaveTextContent('Click where to measure from');
    const view = find('.spot-map-view');
    // A few pixels beside the dots: the spots are meant.
    const [from, to] = [dotOf('Pier head'), dotOf('Lighthouse terrace')];
    await userEvent.click(view, { position: { x: from.x + 4, y: from.y - 3 } });
    await expect.element(measured()).toHaveTextContent('Now click where to measure to');
    await userEvent.click(view, { position: { x: to.x - 4, y: to.y + 3 } });
    await expect.element(measured()).toHaveTextContent('From Pier head to Lighthouse terrace');
    expect(figure('measured')).toBe(
      `${Math.round(way.distanceM)} m, bearing ${way.bearingDeg.toFixed(1)}° NE`,
    );
    // World Magnetic Model 2025 at 45.65° N 13.76° E in May 2027: about 4.8° east (NOAA's chart of
    // declination for 2025, read to half a degree).
    await expect
      .poll(() => document.querySelector('[data-figure="measured-compass"]') !== null)
      .toBe(true);
    const compassDeg = Number.parseFloat(figure('measured-compass'));
    expect(way.bearingDeg - compassDeg).toBeGreaterThan(4);
    expect(way.bearingDeg - compassDeg).toBeLessThan(5.5);
    expect(figure('measured-compass')).toContain('World Magnetic Model 2025 for 2027.4');
    expect(onSelect).not.toHaveBeenCalled();
    expect(document.querySelectorAll('.measure-end')).toHaveLength(2);
  });

  test('by keyboard: Enter at the cross, twice, with the map moved between', async () => {
    await show();
    find('[data-measure]').focus();
    await userEvent.keyboard('{Enter}');
    await expect.element(measured()).toBeVisible();
    expect(document.activeElement).toBe(find('.spot-map-view'));
    await userEvent.keyboard('{Enter}');
    await expect.element(measured()).toHaveTextContent('Now click where to measure to');
    await userEvent.keyboard('{ArrowRight}');
    // An arrow key pans the map by 80 px; how many metres that is the scale bar says, rounded to
    // half a pixel of its 48 or more.
    const bar = find('.scale-bar').getBoundingClientRect().width;
    const metres = (80 * lengthM(figure('map-scale'))) / bar;
    await expect
      .poll(() => lengthM(document.querySelector('[data-figure="measured"]')?.textContent ?? ''))
      .toSatisfy((shownM: number) => Math.abs(shownM / metres - 1) < 0.015);
    expect(figure('measured')).toMatch(/bearing (89\.9|90\.\d)° E$/);
    await userEvent.keyboard('{Enter}');
    await expect
      .element(measured())
      .toHaveTextContent('From a point on the map to a point on the map');
  });

  test('Escape ends it and takes the line away; a third point begins anew', async () => {
    await show();
    await page.getByRole('button', { name: 'Measure distance and bearing' }).click();
    await expect.element(measured()).toBeVisible();
    const view = find('.spot-map-view');
    for (const [x, y] of [
      [200, 400],
      [400, 400],
      [300, 300],
    ] as const)
      await userEvent.click(view, { position: { x, y } });
    await expect.element(measured()).toHaveTextContent('Now click where to measure to');
    await userEvent.keyboard('{Escape}');
    await expect.element(measured()).not.toBeInTheDocument();
    expect(document.querySelectorAll('.measure-end, .measure-line')).toHaveLength(0);
    expect(find('[data-measure]').getAttribute('aria-pressed')).toBe('false');
  });

  test('while a spot is being added nothing is measured, and a click adds', async () => {
    const onAddAt = vi.fn<SpotMapProps['onAddAt']>();
    await show({ adding: true, onAddAt });
    await expect
      .element(page.getByRole('button', { name: 'Measure distance and bearing' }))
      .toBeDisabled();
    await userEvent.click(find('.spot-map-view'), { position: { x: 300, y: 420 } });
    expect(onAddAt).toHaveBeenCalledTimes(1);
  });
});

const position = (latitude: number, longitude: number, accuracy: number): GeolocationPosition =>
  ({ coords: { latitude, longitude, accuracy } }) as GeolocationPosition;

describe('own position', () => {
  test('is asked for only on request, marked with its circle, and becomes a spot when asked', async () => {
    const ask = vi
      .spyOn(navigator.geolocation, 'getCurrentPosition')
      .mockImplementation((found) => found(position(45.66, 13.77, 31.2)));
    const onAddAt = vi.fn<SpotMapProps['onAddAt']>();
    await show({ onAddAt });
    expect(ask).not.toHaveBeenCalled();
    await page.getByRole('button', { name: 'Own position' }).click();
    await expect.element(page.getByText('You are here, within 32 m')).toBeVisible();
    expect(ask).toHaveBeenCalledTimes(1);
    // The circle is to scale: 31.2 m against the scale bar's own metres.
    const bar = find('.scale-bar');
    const barM = lengthM(figure('map-scale'));
    const circlePx = find('.accuracy').getBoundingClientRect().width - 1;
    expect((circlePx / bar.getBoundingClientRect().width) * barM).toBeGreaterThan(62.4 * 0.93);
    expect((circlePx / bar.getBoundingClientRect().width) * barM).toBeLessThan(62.4 * 1.07);
    await page.getByRole('button', { name: 'Add a spot here' }).click();
    expect(onAddAt).toHaveBeenCalledExactlyOnceWith({
      latitudeDeg: 45.66,
      longitudeDeg: 13.77,
    } satisfies GeoPoint);
    await expect.element(page.getByText('You are here')).not.toBeInTheDocument();
    expect(document.querySelectorAll('.place-mark, .accuracy')).toHaveLength(0);
  });

  test('refused, it says so and marks nothing', async () => {
    vi.spyOn(navigator.geolocation, 'getCurrentPosition').mockImplementation((_found, failed) =>
      failed?.({ code: 1 } as GeolocationPositionError),
    );
    await show();
    await page.getByRole('button', { name: 'Own position' }).click();
    await expect.element(page.getByText(/refused/)).toBeVisible();
    expect(document.querySelectorAll('.place-mark')).toHaveLength(0);
  });

  test('an answer after it was given up is not shown', async () => {
    let answer: PositionCallback | undefined;
    vi.spyOn(navigator.geolocation, 'getCurrentPosition').mockImplementation((found) => {
      answer = found;
    });
    await show();
    await page.getByRole('button', { name: 'Own position' }).click();
    await page.getByRole('button', { name: 'Do not ask' }).click();
    answer?.(position(45.66, 13.77, 31.2));
    await expect.element(page.getByText('You are here')).not.toBeInTheDocument();
    expect(document.querySelectorAll('.place-mark')).toHaveLength(0);
  });
});

test('a place shown is brought into view and marked without a spot, and can become one', async () => {
  const onAddAt = vi.fn<SpotMapProps['onAddAt']>();
  await show({ onAddAt });
  const before = figure('map-scale');
  look({ shownPlace: { name: 'Ushuaia', point: { latitudeDeg: -54.8, longitudeDeg: -68.3 } } });
  await expect.element(page.getByText('Ushuaia')).toBeVisible();
  const mark = find('.place-mark').getBoundingClientRect();
  const view = find('.spot-map-view').getBoundingClientRect();
  expect(mark.left + mark.width / 2 - view.left).toBeCloseTo(450, -1);
  expect(mark.top + mark.height / 2 - view.top).toBeCloseTo(320, -1);
  expect(before).not.toBe('');
  expect(onAddAt).not.toHaveBeenCalled();
  await page.getByRole('button', { name: 'Add a spot here' }).click();
  expect(onAddAt).toHaveBeenCalledExactlyOnceWith({ latitudeDeg: -54.8, longitudeDeg: -68.3 });
  expect(document.querySelectorAll('.place-mark')).toHaveLength(0);
});

const perPixel = (): number =>
  lengthM(figure('map-scale')) / find('.scale-bar').getBoundingClientRect().width;

test('the scale follows the latitude of the middle: a bar of one length is longer nearer a pole', async () => {
  await show({ fitTo: [] });
  look({ shownPlace: { name: 'Equator', point: { latitudeDeg: 0, longitudeDeg: 10 } } });
  // 156,543.034 m cos φ / 2^13, to the half pixel of the bar.
  await expect.poll(perPixel).toBeCloseTo(19.109, 0);
  look({ shownPlace: { name: 'North', point: { latitudeDeg: 60, longitudeDeg: 10 } } });
  await expect.poll(perPixel).toBeCloseTo(9.555, 0);
  await expect.element(page.getByRole('img', { name: 'North is up' })).toBeVisible();
});
