import { beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';
import type { MapSpot } from '../../../src/app/map/map-spot.ts';
import type { SpotMapProps } from '../../../src/app/map/spot-map-props.ts';
import { SpotMap } from '../../../src/app/map/SpotMap.tsx';

const ringEv = Array.from({ length: 72 }, () => 14);

/** A square of spots 0.01° apart, from its lower left corner. */
const grid = (side: number): readonly MapSpot[] =>
  Array.from({ length: side * side }, (_, at) => ({
    id: `spot-${at}`,
    name: `Spot ${at}`,
    point: {
      latitudeDeg: 45 + 0.01 * Math.floor(at / side),
      longitudeDeg: 13 + 0.01 * (at % side),
    },
    bearingDeg: 90,
    horizontalFovDeg: 50,
    ringEv,
  }));

const show = (spots: readonly MapSpot[], changes: Partial<SpotMapProps> = {}) => {
  const element = (more: Partial<SpotMapProps> = {}) => (
    <div style={{ width: 900, height: 640 }}>
      <SpotMap
        spots={spots}
        selectedId={null}
        ringRangeEv={{ minEv: 12, maxEv: 16 }}
        tiles={null}
        adding={false}
        onSelect={vi.fn<SpotMapProps['onSelect']>()}
        onMove={vi.fn<SpotMapProps['onMove']>()}
        onTurn={vi.fn<SpotMapProps['onTurn']>()}
        onAddAt={vi.fn<SpotMapProps['onAddAt']>()}
        loadOutline={async () => null}
        fitTo={spots.map(({ point }) => point)}
        {...changes}
        {...more}
      />
    </div>
  );
  return { screen: render(element()), again: element };
};

const count = (selector: string): number => document.querySelectorAll(selector).length;
const note = () => page.getByText('many spots: rings and names from closer by');

beforeEach(async () => page.viewport(900, 640));

test('forty spots each have ring, wedge and name', async () => {
  await show(grid(7).slice(0, 40)).screen;
  await expect.poll(() => count('.spot')).toBe(40);
  expect(count('.dot-alone')).toBe(0);
  await expect.element(note()).not.toBeInTheDocument();
});

test('of four hundred in view each is a dot, the chosen one alone is drawn whole, and it is said', async () => {
  await show(grid(20), { selectedId: 'spot-210' }).screen;
  await expect.poll(() => count('.dot-alone')).toBe(399);
  expect(count('.spot')).toBe(1);
  expect(count('.spot.selected')).toBe(1);
  await expect.element(note()).toBeVisible();
});

test('closer by, those in view are drawn whole and those far off not at all', async () => {
  await show(grid(20), {
    fitTo: grid(20)
      .slice(0, 3)
      .map(({ point }) => point),
  }).screen;
  await expect.poll(() => count('.spot')).toBeGreaterThan(2);
  await expect.poll(() => count('.spot') + count('.dot-alone')).toBeLessThan(200);
  await expect.element(note()).not.toBeInTheDocument();
  await expect.element(page.getByRole('button', { name: 'Spot 1', exact: true })).toBeVisible();
});

test('panned, the map draws what comes into view and drops what left it', async () => {
  await show(grid(20), {
    fitTo: grid(20)
      .slice(0, 3)
      .map(({ point }) => point),
  }).screen;
  await expect.poll(() => count('[aria-label="Spot 1"]')).toBe(1);
  expect(count('[aria-label="Spot 15"]')).toBe(0);
  const view = document.querySelector<HTMLElement>('.spot-map-view');
  view?.focus();
  for (let step = 0; step < 30 && count('[aria-label="Spot 15"]') === 0; step += 1) {
    await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}');
    await new Promise((wait) => setTimeout(wait, 350));
  }
  expect(count('[aria-label="Spot 15"]')).toBe(1);
  expect(count('[aria-label="Spot 1"]')).toBe(0);
});

test('a dot is chosen by key, and the focus goes along to the spot drawn whole', async () => {
  const onSelect = vi.fn<SpotMapProps['onSelect']>();
  const { screen, again } = show(grid(20), { onSelect });
  const shown = await screen;
  await expect.poll(() => count('.dot-alone')).toBe(400);
  document.querySelector<HTMLElement>('[aria-label="Spot 210"]')?.focus();
  await userEvent.keyboard('{Enter}');
  expect(onSelect).toHaveBeenCalledExactlyOnceWith('spot-210');
  await shown.rerender(again({ selectedId: 'spot-210' }));
  await expect.poll(() => count('.spot.selected')).toBe(1);
  expect(document.activeElement?.getAttribute('aria-label')).toBe('Spot 210');
  expect(document.activeElement?.closest('.spot')).not.toBeNull();
});
