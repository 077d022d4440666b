import type { Map as LeafletMap } from 'leaflet';
import { StrictMode } from 'react';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { GroundLayers, type GroundLayersProps } from '../../../src/app/map/GroundLayers.tsx';
import type { GroundOutline } from '../../../src/app/map/ground-shapes.ts';
import { SpotMap } from '../../../src/app/map/SpotMap.tsx';
import type { Corner, Obstacle } from '../../../src/core/skyline/obstacle.ts';

const HERE = { latitudeDeg: 45.65, longitudeDeg: 13.757 };
/** About a metre on the ground, degrees. */
const NORTH = 1 / 111_150;
const EAST = 1 / 77_900;

const at = (eastM: number, northM: number): Corner => [
  HERE.longitudeDeg + eastM * EAST,
  HERE.latitudeDeg + northM * NORTH,
];

const house: Obstacle = {
  kind: 'building',
  closed: true,
  outline: [at(-20, -10), at(20, -10), at(20, 10), at(-20, 10)],
  heightM: 20,
  crownBaseM: 0,
  passesInLeaf: 0,
  passesBare: 0,
  footElevationM: null,
};

const outlineOf = (key: string, obstacle: Obstacle): GroundOutline => ({
  key,
  kind: obstacle.kind,
  closed: obstacle.closed,
  solid: obstacle.closed,
  rings: [obstacle.outline],
});

const calls = () => ({
  onDrawn: vi.fn<GroundLayersProps['onDrawn']>(),
  onReshaped: vi.fn<GroundLayersProps['onReshaped']>(),
  onCorner: vi.fn<GroundLayersProps['onCorner']>(),
  onPick: vi.fn<GroundLayersProps['onPick']>(),
  onEscape: vi.fn<GroundLayersProps['onEscape']>(),
  onDrawingFailed: vi.fn<GroundLayersProps['onDrawingFailed']>(),
});

type Changes = Partial<Omit<GroundLayersProps, 'map'>>;

const groundProps = (changes: Changes): Omit<GroundLayersProps, 'map'> => ({
  outlines: [],
  obstacles: [],
  sun: null,
  date: '2027-05-14',
  note: 'no shadows',
  listening: true,
  draws: null,
  corners: [],
  held: null,
  ...calls(),
  ...changes,
});

let shown: LeafletMap | null = null;

const mapWith = (changes: Changes) => (
  <div style={{ width: 800, height: 600 }}>
    <SpotMap
      spots={[]}
      selectedId={null}
      ringRangeEv={{ minEv: 12, maxEv: 16 }}
      tiles={null}
      adding={false}
      onSelect={() => undefined}
      onMove={() => undefined}
      onTurn={() => undefined}
      onAddAt={() => undefined}
      loadOutline={async () => null}
      fitTo={[HERE]}
    >
      {(map) => {
        shown = map;
        return <GroundLayers map={map} {...groundProps(changes)} />;
      }}
    </SpotMap>
  </div>
);

const theMap = (): LeafletMap => {
  if (shown === null) throw new Error('no map was made');
  return shown;
};

const frames = async (): Promise<void> => {
  for (let count = 0; count < 2; count += 1)
    await new Promise<number>((resolve) => requestAnimationFrame(resolve));
};

/** The map 1:1 about the place: 19 is 0.2 m a pixel there. */
const show = async (changes: Changes) => {
  const screen = await render(mapWith(changes));
  theMap().setView([HERE.latitudeDeg, HERE.longitudeDeg], 18, { animate: false });
  await frames();
  return screen;
};

const pixelOf = ([longitudeDeg, latitudeDeg]: Corner) =>
  theMap().latLngToContainerPoint([latitudeDeg, longitudeDeg]);

/** How dark a canvas of the ground is at a place, 0 to 255. */
const darknessAt = (canvas: string, place: Corner): number => {
  const node = document.querySelector<HTMLCanvasElement>(canvas);
  const context = node?.getContext('2d');
  if (!node || !context) throw new Error(`nothing on the page is ${canvas}`);
  const view = theMap().getContainer().getBoundingClientRect();
  const box = node.getBoundingClientRect();
  const { x, y } = pixelOf(place);
  const density = node.width / box.width;
  const data = context.getImageData(
    Math.round((view.left + x - box.left) * density),
    Math.round((view.top + y - box.top) * density),
    1,
    1,
  ).data;
  return data[3] ?? 0;
};

const shadowAt = (place: Corner): number => darknessAt('.ground-shadows', place);

const view = (): HTMLElement => theMap().getContainer();

const click = async (place: Corner): Promise<void> => {
  const { x, y } = pixelOf(place);
  await userEvent.click(view(), { position: { x, y }, force: true });
};

const drag = async (from: Corner, to: Corner): Promise<void> => {
  await userEvent.dragAndDrop(view(), view(), {
    sourcePosition: pixelOf(from),
    targetPosition: pixelOf(to),
    force: true,
    steps: 40,
  });
};

const drawingIsThere = async (): Promise<void> => {
  // The library is fetched when it is first wanted.
  await vi.waitFor(() => expect(view().style.cursor).not.toBe(''), 5000);
};

/** Its corners have their handles. */
const outlineIsHeld = async (): Promise<void> => {
  await vi.waitFor(
    () => expect(view().querySelectorAll('svg path').length).toBeGreaterThanOrEqual(5),
    5000,
  );
};

const expectNear = (corner: Corner | undefined, wanted: Corner): void => {
  const { x, y } = pixelOf(corner ?? [0, 0]);
  const aim = pixelOf(wanted);
  expect(Math.hypot(x - aim.x, y - aim.y)).toBeLessThan(1.5);
};

beforeEach(async () => page.viewport(820, 620));

describe('shadows on the map', () => {
  const sun = { azimuthDeg: 180, apparentAltitudeDeg: 45 };

  test('with the sun in the south at 45° a house of 20 m darkens 20 m to its north', async () => {
    await show({ outlines: [outlineOf('h', house)], obstacles: [house], sun });
    expect(shadowAt(at(0, 20))).toBe(255);
    expect(shadowAt(at(0, 29))).toBeGreaterThan(200);
    expect(shadowAt(at(0, 31))).toBe(0);
    expect(shadowAt(at(21, 20))).toBe(0);
    expect(shadowAt(at(0, -12))).toBe(0);
  });

  test('two houses whose shadows overlap are no darker than one, and leave no gap', async () => {
    const other = { ...house, outline: [at(-20, -5), at(20, -5), at(20, 15), at(-20, 15)] };
    const screen = await show({ obstacles: [house], sun });
    const one = shadowAt(at(0, 22));
    for (const obstacles of [
      [house, other],
      [house, house],
      [house, other, house],
    ]) {
      await screen.rerender(mapWith({ obstacles, sun }));
      await frames();
      expect([shadowAt(at(0, 22)), shadowAt(at(0, 0))]).toEqual([one, one]);
    }
    expect(shadowAt(at(0, 33))).toBe(one);
  });

  test('two crowns over one another let through what one does', async () => {
    const crown: Obstacle = { ...house, kind: 'trees', passesInLeaf: 0.2 };
    const other = { ...crown, outline: [at(-10, -5), at(10, -5), at(10, 15), at(-10, 15)] };
    const screen = await show({ obstacles: [crown], sun });
    const one = shadowAt(at(0, 22));
    expect(one).toBe(204);
    await screen.rerender(mapWith({ obstacles: [crown, other], sun }));
    await frames();
    expect(shadowAt(at(0, 22))).toBe(one);
  });

  test('a crown that lets some light through is paler, and darkens no shadow of a house', async () => {
    const crown: Obstacle = {
      ...house,
      kind: 'trees',
      outline: [at(-10, 0), at(60, 0), at(60, 10), at(-10, 10)],
      passesInLeaf: 0.2,
    };
    const screen = await show({ obstacles: [house], sun });
    const whole = shadowAt(at(0, 20));
    await screen.rerender(mapWith({ obstacles: [crown, house], sun }));
    await frames();
    expect(shadowAt(at(0, 20))).toBe(whole);
    const thin = shadowAt(at(40, 20));
    expect(thin / whole).toBeGreaterThan(0.75);
    expect(thin / whole).toBeLessThan(0.85);
  });

  test('the shadow turns with the minute and goes with the sun', async () => {
    const screen = await show({ obstacles: [house], sun });
    await screen.rerender(
      mapWith({ obstacles: [house], sun: { azimuthDeg: 270, apparentAltitudeDeg: 45 } }),
    );
    await frames();
    expect(shadowAt(at(35, 0))).toBeGreaterThan(200);
    expect(shadowAt(at(0, 20))).toBe(0);
    await screen.rerender(
      mapWith({ obstacles: [house], sun: { azimuthDeg: 290, apparentAltitudeDeg: -0.5 } }),
    );
    await frames();
    expect(shadowAt(at(35, 0))).toBe(0);
    expect(shadowAt(at(0, 0))).toBe(0);
  });

  test('the shadow stays on its place when the map is panned or zoomed', async () => {
    await show({ obstacles: [house], sun });
    theMap().panBy([90, -40], { animate: false });
    await frames();
    expect(shadowAt(at(0, 29))).toBeGreaterThan(200);
    expect(shadowAt(at(0, 31))).toBe(0);
    theMap().setView([HERE.latitudeDeg, HERE.longitudeDeg + 360], 19, { animate: false });
    await frames();
    const shifted = (eastM: number, northM: number): Corner => [
      at(eastM, northM)[0] + 360,
      at(eastM, northM)[1],
    ];
    expect(shadowAt(shifted(0, 29))).toBeGreaterThan(200);
    expect(shadowAt(shifted(0, 31))).toBe(0);
  });
});

describe('drawing by pointer', () => {
  test('four clicks and the first again are a ring of four corners, handed over once', async () => {
    const made = calls();
    await show({ draws: 'ring', ...made });
    await drawingIsThere();
    const corners = [at(-30, -20), at(30, -20), at(30, 20), at(-30, 20)];
    for (const corner of [...corners, at(-30, -20)]) await click(corner);
    await vi.waitFor(() => expect(made.onDrawn).toHaveBeenCalledTimes(1));
    const [outline] = made.onDrawn.mock.calls[0] ?? [];
    expect(outline?.closed).toBe(true);
    expect(outline?.corners).toHaveLength(4);
    corners.forEach((corner, index) => expectNear(outline?.corners[index], corner));
    expect(made.onPick).not.toHaveBeenCalled();
  });

  test('a tool put away in mid-drawing leaves nothing, and can be taken up again', async () => {
    const made = calls();
    const screen = await show({ draws: 'line', ...made });
    await drawingIsThere();
    await click(at(-30, -20));
    await screen.rerender(mapWith({ draws: null, ...made }));
    await frames();
    expect(view().querySelectorAll('svg path')).toHaveLength(0);
    await screen.rerender(mapWith({ draws: 'line', ...made }));
    await drawingIsThere();
    for (const corner of [at(-30, 20), at(30, 20), at(30, 20)]) await click(corner);
    await vi.waitFor(() => expect(made.onDrawn).toHaveBeenCalledTimes(1));
  });

  test('the click that ends a drawing is no click on what stands there', async () => {
    const made = calls();
    const screen = await show({ draws: 'line', ...made });
    await drawingIsThere();
    made.onDrawn.mockImplementation(
      () => void screen.rerender(mapWith({ draws: null, ...made, onDrawn: made.onDrawn })),
    );
    for (const corner of [at(-30, -20), at(30, -20), at(30, -20)]) await click(corner);
    await vi.waitFor(() => expect(made.onDrawn).toHaveBeenCalledTimes(1));
    await frames();
    expect(made.onPick).not.toHaveBeenCalled();
    await click(at(0, 20));
    expect(made.onPick).toHaveBeenCalledExactlyOnceWith(null);
  });

  test('two clicks and the second again are a line', async () => {
    const made = calls();
    await show({ draws: 'line', ...made });
    await drawingIsThere();
    for (const corner of [at(-30, -20), at(30, -20), at(30, -20)]) await click(corner);
    await vi.waitFor(() => expect(made.onDrawn).toHaveBeenCalledTimes(1));
    const [outline] = made.onDrawn.mock.calls[0] ?? [];
    expect(outline?.closed).toBe(false);
    expect(outline?.corners).toHaveLength(2);
  });

  test('dragging a corner of the held outline reports its corners once, on release', async () => {
    const made = calls();
    const held = { key: 'h', closed: true, corners: house.outline };
    await show({ outlines: [outlineOf('h', house)], held, ...made });
    await outlineIsHeld();
    await drag(at(20, 10), at(30, 25));
    await vi.waitFor(() => expect(made.onReshaped).toHaveBeenCalledTimes(1));
    const [corners] = made.onReshaped.mock.calls[0] ?? [];
    expect(corners).toHaveLength(4);
    expectNear(corners?.[2], at(30, 25));
    expectNear(corners?.[0], at(-20, -10));
    expect(made.onPick).not.toHaveBeenCalled();
  });

  test('dragging the middle of the held outline moves all of it', async () => {
    const made = calls();
    const held = { key: 'h', closed: true, corners: house.outline };
    await show({ held, ...made });
    await outlineIsHeld();
    await drag(at(8, 0), at(28, 20));
    await vi.waitFor(() => expect(made.onReshaped).toHaveBeenCalledTimes(1));
    const [corners] = made.onReshaped.mock.calls[0] ?? [];
    expectNear(corners?.[0], at(0, 10));
    expectNear(corners?.[2], at(40, 30));
  });

  test('an outline changed elsewhere, as by undo, is what the hand holds next', async () => {
    const made = calls();
    const held = { key: 'h', closed: true, corners: house.outline };
    const screen = await show({ held, ...made });
    await outlineIsHeld();
    const moved = house.outline.map(([east, north]): Corner => [east + 20 * EAST, north]);
    await screen.rerender(mapWith({ held: { ...held, corners: moved }, ...made }));
    await frames();
    await drag(at(40, 10), at(45, 20));
    await vi.waitFor(() => expect(made.onReshaped).toHaveBeenCalledTimes(1));
    expectNear(made.onReshaped.mock.calls[0]?.[0][2], at(45, 20));
  });
});

describe('without a pointer', () => {
  test('Enter at the cross gives a corner; nothing is drawn by it alone', async () => {
    const made = calls();
    await show({ draws: 'ring', ...made });
    view().focus();
    await userEvent.keyboard('{Enter}');
    expect(made.onCorner).toHaveBeenCalledTimes(1);
    expect(made.onCorner.mock.calls[0]?.[0].latitudeDeg).toBeCloseTo(HERE.latitudeDeg, 5);
    expect(made.onDrawn).not.toHaveBeenCalled();
    await userEvent.keyboard('{Escape}');
    expect(made.onEscape).toHaveBeenCalledTimes(1);
  });

  test('with nothing to draw Enter names what stands at the cross', async () => {
    const made = calls();
    await show({ outlines: [outlineOf('h', house)], ...made });
    view().focus();
    await userEvent.keyboard('{Enter}');
    expect(made.onPick).toHaveBeenCalledExactlyOnceWith('h');
  });
});

test('a click names the outline under it, a wall within a finger’s width, open ground nothing', async () => {
  const made = calls();
  const wall: Obstacle = {
    ...house,
    kind: 'wall',
    closed: false,
    outline: [at(-50, 40), at(50, 40)],
  };
  await show({ outlines: [outlineOf('h', house), outlineOf('w', wall)], ...made });
  await click(at(5, 5));
  await click(at(20, 41));
  await click(at(-45, -30));
  expect(made.onPick.mock.calls).toEqual([['h'], ['w'], [null]]);
});

test('mounted twice in strict mode there is one canvas of each kind; unmounted in mid-drawing, none', async () => {
  const screen = await render(<StrictMode>{mapWith({ draws: 'ring' })}</StrictMode>);
  await drawingIsThere();
  expect(document.querySelectorAll('.ground-shadows')).toHaveLength(1);
  expect(document.querySelectorAll('.ground-standing')).toHaveLength(1);
  await screen.unmount();
  expect(document.querySelectorAll('.ground-shadows, .leaflet-map-pane')).toHaveLength(0);
});
