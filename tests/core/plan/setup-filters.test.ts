import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { editLight, editSetup, together, type Edit } from '../../../src/core/plan/edits.ts';
import { frameScene } from '../../../src/core/plan/frame-scene.ts';
import type { Filter, Kit } from '../../../src/core/plan/kit.ts';
import { lensStack, type LensStack } from '../../../src/core/plan/lens-stack.ts';
import { predictedFrame } from '../../../src/core/plan/predicted-frame.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import { setupColumn } from '../../../src/core/plan/setup-column.ts';
import { ndFor } from '../../../src/core/plan/setup-filters.ts';
import type { SetupView, WorkingSetup } from '../../../src/core/plan/setup-view.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import { toneMarks } from '../../../src/core/plan/tone-marks.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const working = (view: SetupView): WorkingSetup => {
  if (!view.answer.ok) throw new Error(`expected a recipe: ${JSON.stringify(view.answer.problem)}`);
  return view.answer.value;
};

/** One person at the pier, the sky a stop under: room on every side. */
const roomy = together(
  editSetup('quartet', { people: 1, holdStops: 1 }),
  editLight('quartet', 'key', { distanceM: 2.5 }),
  editLight('quartet', 'fill', { distanceM: 2.8 }),
);

const minute = (ids: readonly string[] | null, ...edits: readonly Edit<Shoot>[]): SetupCaseInput =>
  demoMinute(
    'quartet',
    '20:00',
    'clear',
    roomy,
    editSetup('quartet', {
      pinnedFilterIds:
        ids === null ? null : Object.fromEntries(ids.map((id) => [id, true as const])),
    }),
    ...edits,
  );

const withKit = (asked: SetupCaseInput, change: (kit: Kit) => void): SetupCaseInput => ({
  ...asked,
  kit: produce(asked.kit, (draft) => change(draft)),
});

const viewOf = (...asked: Parameters<typeof minute>): SetupView => viewOfMinute(minute(...asked));

const stackOf = (asked: SetupCaseInput): LensStack =>
  defined(lensStack(viewOfMinute(asked), asked.kit));

const ev = (ids: readonly string[]): number => {
  const { shutterS, fNumber, iso } = working(viewOf(ids)).recipe;
  return Math.log2((fNumber ** 2 / shutterS) * (100 / iso));
};

const stackAt = (graduationFraction: number): LensStack =>
  stackOf(minute(['grad-2'], editSetup('quartet', { graduationFraction })));
const face = defined(stackAt(0).graduated);

describe('filters pinned before the lens', () => {
  test('ND and a colour filter take from flash and ambient alike: the power stays, what is in hand too', () => {
    const bare = working(viewOf([])).recipe;
    for (const ids of [['nd-2'], ['blue-80a'], ['nd-2', 'blue-80a']]) {
      const { recipe } = working(viewOf(ids));
      expect(recipe.inHandStops).toBeCloseTo(bare.inHandStops, 9);
      const shutterStops = Math.log2(recipe.shutterS / bare.shutterS);
      for (const [place, light] of recipe.lights.entries()) {
        const power = light.powerStops - defined(bare.lights[place]).powerStops;
        // The head's tenth, and a third of a click on camera.
        expect(Math.abs(power - shutterStops)).toBeLessThan(0.45);
      }
    }
  });

  test('an 80A of two stops opens the camera by two stops, as its factor of 4 says', () => {
    expect(Math.abs(ev([]) - ev(['blue-80a']) - 2)).toBeLessThan(0.34);
  });

  test('a graduated filter clear of the faces darkens the sky and costs the flash nothing', () => {
    // The hold counts from a patch high in the sky.
    const patch = { xFraction: 0.25, yFraction: 0.35, widthFraction: 0.1, heightFraction: 0.1 };
    const bare = viewOf([], editSetup('quartet', { patch }));
    const high = viewOf(['grad-2'], editSetup('quartet', { patch, graduationFraction: 0.25 }));
    const stack = defined(lensStack(high, minute([]).kit));
    expect(stack.graduated?.faceStops).toBe(0);
    const taken = defined(stack.graduated?.patchStops);
    expect(taken).toBeGreaterThan(0);
    expect(high.input.otherFilterStops).toBe(0);
    expect(working(high).recipe.inHandStops - working(bare).recipe.inHandStops).toBeCloseTo(
      taken,
      6,
    );
  });

  test('over the whole picture it is plain ND: nothing is gained', () => {
    const bare = working(viewOf([])).recipe;
    const low = viewOf(
      ['grad-2'],
      editSetup('quartet', { graduationFraction: -0.5, framing: lowFraming }),
    );
    expect(low.question.faceFilterStops).toBeCloseTo(2, 6);
    const own = working(viewOf([], editSetup('quartet', { framing: lowFraming }))).recipe;
    expect(working(low).recipe.inHandStops).toBeCloseTo(own.inHandStops, 1);
    expect(bare.inHandStops).toBeGreaterThan(0);
  });

  test('a head that crosses the line loses stops, and the flash makes them up', () => {
    expect(face.crownStops).toBeGreaterThanOrEqual(face.faceStops);
    expect(stackAt(-0.3).graduated?.faceStops).toBeGreaterThan(0.3);
    expect(stackAt(-0.3).evenStops).toBeCloseTo(defined(stackAt(-0.3).graduated).faceStops, 9);
  });

  test('a polariser is judged at its middle: in hand by as much more as it then darkens the patch', () => {
    const bare = working(viewOf([])).recipe;
    const view = viewOf(['polariser']);
    const range = defined(defined(lensStack(view, minute([]).kit)).polariser).patch;
    expect(view.input.otherFilterStops).toBe(1.5);
    expect(working(view).recipe.inHandStops - bare.inHandStops).toBeCloseTo(range.middleStops, 6);
    expect(working(view).forward.lands).toBe(true);
  });

  test('every mix of them lands by the second path', () => {
    const all = ['nd-2', 'nd-3', 'polariser', 'grad-2', 'blue-80a'];
    for (let mix = 0; mix < 2 ** all.length; mix += 1) {
      const ids = all.filter((_, place) => (mix & (1 << place)) !== 0);
      const view = viewOf(ids, editSetup('quartet', { graduationFraction: 0.1 }));
      if (view.answer.ok) expect(view.answer.value.forward.lands).toBe(true);
      else expect(view.answer.problem.kind).toBe('no-setting');
    }
  });

  test('the day’s column stands on the same references', () => {
    const asked = minute(
      ['grad-2', 'polariser'],
      editSetup('quartet', { graduationFraction: 0.1 }),
    );
    const view = viewOfMinute(asked);
    const { skyFilters: _, ...scene } = view.scene;
    const column = setupColumn({
      scene,
      question: view.question,
      date: asked.shoot.date,
      stepMin: 10,
    });
    const at = column.instantMs.indexOf(asked.instantMs);
    const { recipe } = working(view);
    expect(column.referenceEv[at]).toBeCloseTo(view.referenceEv, 6);
    expect(column.reachEv[at]).toBeCloseTo(recipe.reachEv, 6);
    expect(column.inHandStops[at]).toBeCloseTo(recipe.inHandStops, 6);
    expect(recipe.reachEv - view.referenceEv).toBeCloseTo(recipe.inHandStops, 6);
  });
});

const lowFraming = {
  ...defined(demoMinute('quartet', '20:00', 'clear').shoot.spots.pier).framing,
  tiltDeg: -4,
};

const variable =
  (change: Partial<Filter> = {}) =>
  (kit: Kit) => {
    Object.assign(defined(kit.filters['nd-3']), {
      kind: 'variable-nd',
      stops: 2,
      maxStops: 5,
      ...change,
    });
  };

describe('variable ND', () => {
  test('pinned, the recipe turns it: to about what the wished aperture takes', () => {
    const asked = withKit(minute(['nd-3'], editSetup('quartet', { wishFNumber: 2.8 })), variable());
    const { filters, recipe } = working(viewOfMinute(asked));
    expect(filters).toHaveLength(1);
    expect(filters[0]?.stops).toBeCloseTo(recipe.ndStops, 9);
    expect(recipe.ndStops).toBeGreaterThanOrEqual(2);
    expect(recipe.ndStops).toBeLessThanOrEqual(5);
    expect(Math.abs(recipe.fNumber - 2.8)).toBeLessThan(0.6);
  });

  test('free, it is among what the solver takes', () => {
    const asked = withKit(minute(null, editSetup('quartet', { wishFNumber: 2 })), variable());
    expect(ndFor({ threadMm: 82 }, asked.kit).map(([id]) => id)).toEqual(['nd-2', 'nd-3']);
    const view = viewOfMinute(asked);
    expect(view.input.ndStacks?.map(({ stops }) => stops)).toContain(5);
    expect(working(view).forward.lands).toBe(true);
  });
});

const mostStackedAt = (focalLengthMm: number): number =>
  Math.max(
    ...(
      viewOf(null, editSetup('quartet', { framing: { ...lowFraming, focalLengthMm, tiltDeg: 8 } }))
        .input.ndStacks ?? []
    ).map(({ filters }) => filters.length),
  );

const fits = (threadMm: number): string | undefined =>
  stackOf(
    withKit(minute(['nd-2']), (kit) => {
      Object.assign(defined(kit.filters['nd-2']), { threadMm });
    }),
  ).threads[0]?.fit;

describe('what a stack comes to', () => {
  test('one ring of 5 mm fits a zoom at its shortest, two do not', () => {
    const wide = editSetup('quartet', {
      framing: { ...lowFraming, focalLengthMm: 24, tiltDeg: 8 },
    });
    const one = stackOf(minute(['nd-2'], wide));
    expect(one.roomMm).toBeCloseTo(5, 6);
    expect(one.figures.depthMm).toBeLessThanOrEqual(one.roomMm);
    const two = stackOf(minute(['nd-2', 'nd-3'], wide));
    expect(two.figures.depthMm).toBeGreaterThan(two.roomMm);
  });

  test('the solver stacks no deeper than the lens takes', () => {
    expect(mostStackedAt(24)).toBe(1);
    expect(mostStackedAt(50)).toBe(2);
  });

  test('a narrower filter cuts the corners off and a wider one takes a step ring', () => {
    expect(fits(67)).toBe('cuts-corners');
    expect(fits(95)).toBe('step-ring');
  });

  test('autofocus looks through the stack: each stop of it is a stop darker', () => {
    const dark = stackOf(minute(['nd-2', 'nd-3'])).focus;
    const bare = stackOf(minute([])).focus;
    expect(bare.faceEv - dark.faceEv).toBeCloseTo(5, 9);
    expect(dark.limitEv).toBe(bare.limitEv);
  });

  test('a stack no exposure opens is said by how much, and unpinning it is offered', () => {
    const asked = withKit(minute(['nd-3', 'blue-80a']), (kit) => {
      Object.assign(defined(kit.filters['nd-3']), { stops: 20 });
    });
    const view = viewOfMinute(asked);
    expect(view.answer.ok).toBe(false);
    if (view.answer.ok) return;
    expect(view.answer.problem).toMatchObject({ kind: 'no-setting', limit: 'too-dark' });
    expect(defined(lensStack(view, asked.kit)).shutByStops).toBeGreaterThan(3);
    expect(view.answer.problem.fixes.map(({ kind }) => kind)).toContain('unpin-nd');
  });
});

const decode = (byte: number): number => {
  const encoded = byte / 255;
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
};

/** A right angle from the sun, where a polariser works; level enough for heads against the sky. */
const across = (...ids: readonly string[]): SetupView =>
  viewOfMinute(
    demoMinute(
      'quartet',
      '20:00',
      'clear',
      roomy,
      editSetup('quartet', {
        pinnedFilterIds: Object.fromEntries(ids.map((id) => [id, true as const])),
        graduationFraction: -0.1,
        framing: { ...lowFraming, bearingDeg: 205, tiltDeg: 6 },
      }),
    ),
  );

const SIZE = { widthPx: 300, heightPx: 200 };

/** Mean luminance of the picture's sky, no figures before it, against mid-grey. */
function paintedStops(view: SetupView): number {
  const scene = frameScene(view, working(view), SIZE);
  // Ground that no sky looks like, however much a filter takes from it.
  const { rgba } = predictedFrame({ ...scene, figures: [], ground: [1e4, 0, 1e4] });
  const linear = (pixel: number, channel: number): number =>
    decode(rgba[4 * pixel + channel] ?? NaN);
  let [sum, count] = [0, 0];
  for (let pixel = 0; pixel < SIZE.heightPx * SIZE.widthPx; pixel += 1) {
    if (rgba[4 * pixel] === 255 && rgba[4 * pixel + 1] === 0) continue;
    sum += 0.2126 * linear(pixel, 0) + 0.7152 * linear(pixel, 1) + 0.0722 * linear(pixel, 2);
    count += 1;
  }
  return Math.log2(sum / count / 0.18);
}

describe('the predicted frame behind filters', () => {
  test.each([
    { ids: ['grad-2'] },
    { ids: ['nd-2'] },
    { ids: ['polariser'] },
    { ids: ['grad-2', 'polariser', 'nd-3'] },
  ])('the painted sky lies where the tone scale puts it behind $ids', ({ ids }) => {
    const view = across(...ids);
    if (ids.includes('grad-2')) expect(view.question.faceFilterStops).toBeGreaterThan(0.5);
    if (ids.includes('polariser'))
      expect(view.light.filteredSky?.polariser?.frame.middleStops).toBeGreaterThan(0.3);
    const mean = defined(toneMarks(view).find(({ name }) => name === 'sky-mean'));
    expect(Math.abs(paintedStops(view) - mean.stops)).toBeLessThan(0.05);
  });

  test('a blue filter turns it blue at about the same luminance', () => {
    const [plain, blue] = [across(), across('blue-80a')];
    const gains = frameScene(blue, working(blue), SIZE).lensGains;
    expect(gains[2]).toBeGreaterThan(1.5 * gains[0]);
    // The camera's clicks leave a sixth of a stop.
    expect(Math.abs(paintedStops(blue) - paintedStops(plain))).toBeLessThan(0.35);
  });

  test('a face half way into the graduated filter is as bright as the recipe says', () => {
    const view = viewOf(['grad-2'], editSetup('quartet', { graduationFraction: -0.1 }));
    const { faceFilterStops } = view.question;
    expect(faceFilterStops).toBeGreaterThan(0.2);
    const [figure] = frameScene(view, working(view), SIZE).figures;
    const { keyStops } = working(view).recipe;
    const skin = Math.sqrt(view.setup.darkestSkin * view.setup.lightestSkin);
    const [red, green, blue] = defined(figure).litSkin;
    const painted = (0.2126 * red + 0.7152 * green + 0.0722 * blue) * 2 ** -faceFilterStops;
    expect(Math.abs(Math.log2(painted / skin) - keyStops)).toBeLessThan(0.05);
  });
});
