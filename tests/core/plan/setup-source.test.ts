import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Kit } from '../../../src/core/plan/kit.ts';
import { setupQuestion, setupSources } from '../../../src/core/plan/setup-lights.ts';
import type { Light } from '../../../src/core/plan/setup-schema.ts';
import type { SetupSource } from '../../../src/core/plan/setup-source.ts';
import { defined } from '../../support/defined.ts';

const spot = defined(demoShoot().spots.pier);
const kitWith = (change: (kit: Kit) => void): Kit => produce(demoKit(), change);

/** The quartet's key, changed. */
function keyWith(fields: Partial<Light>, kit: Kit = demoKit()): SetupSource {
  const setup = produce(defined(demoShoot().setups.quartet), (draft) => {
    Object.assign(defined(draft.lights.key), fields);
  });
  const sources = setupSources(setup, spot, kit);
  if (!sources.ok) throw new Error(JSON.stringify(sources.problem));
  return defined(sources.value.find(({ lightId }) => lightId === 'key'));
}

const straight = keyWith({});
const bounced: Light['bounce'] = {
  reflectance: 0.8,
  colour: '',
  headToSurfaceM: 1,
  incidenceDeg: 0,
  exitDeg: 0,
  panelSideM: null,
};

describe('gels on a light', () => {
  test('a full CTO of 0.67 stop and one stop of ND on it take 1.67 together (published transmissions, F-6)', () => {
    const kit = kitWith((draft) => {
      Object.assign(defined(draft.gels['cto-full']), { stops: -Math.log2(0.63) });
      Object.assign(defined(draft.gels['cto-half']), { stops: 1 });
    });
    const both = keyWith({ gelId: 'cto-full', secondGelId: 'cto-half' }, kit);
    // The two printed percentages, 63 and 31.5, are rounded.
    expect(both.output.lossStops - straight.output.lossStops).toBeCloseTo(-Math.log2(0.315), 2);
  });

  test('a second gel that the kit does not hold is named', () => {
    const setup = produce(defined(demoShoot().setups.quartet), (draft) => {
      defined(draft.lights.key).secondGelId = 'gone';
    });
    expect(setupQuestion(setup, spot, demoKit())).toEqual({
      ok: false,
      problem: { kind: 'not-in-kit', what: 'gel', id: 'gone' },
    });
  });
});

describe('a focusing modifier', () => {
  const kit = kitWith((draft) => {
    defined(draft.modifiers.reflector).settings = {
      // Wide to tele gains about a stop (a metered small flash, H2).
      tele: { order: 'a', name: 'tele', beamDeg: 30, stops: -1 },
    };
  });

  test('set to its narrow end gains what its table says, and no more is known of a setting that is gone', () => {
    expect(keyWith({ modifierSettingId: 'tele' }, kit).output.lossStops).toBeCloseTo(
      straight.output.lossStops - 1,
      12,
    );
    const gone = keyWith({ modifierSettingId: 'gone' }, kit);
    expect(gone.setting).toBeNull();
    expect(gone.output.lossStops).toBeCloseTo(straight.output.lossStops, 12);
  });

  test('brings its own beam: 30° off the axis the wide one is still even, the narrow one 4 stops down', () => {
    const [wide, narrow] = [null, 'tele'].map((modifierSettingId) =>
      keyWith({ modifierSettingId, featherDeg: 30 }, kit),
    );
    expect(wide?.path?.lossStops).toBeCloseTo(0, 12);
    // Half of 30° is 15°, a quarter of that 3.75°.
    expect(narrow?.path?.lossStops).toBeCloseTo(4, 12);
  });
});

describe('a feathered light', () => {
  test('a diffuse face turned 60° off loses a stop at the middle face, on both sides of the account', () => {
    const octa = { modifierId: 'octabox', diffuser: true };
    const off = keyWith({ ...octa, featherDeg: 60 });
    expect(off.path).toMatchObject({ kind: 'feathered', offAxisDeg: 60 });
    expect(off.output.lossStops - keyWith(octa).output.lossStops).toBeCloseTo(1, 9);
    expect(off.output.spreadStops).toBeGreaterThan(keyWith(octa).output.spreadStops);
    expect(off.beamIsAssumed).toBe(false);
  });

  test('where nobody stated the beam, a standard reflector’s is taken and said', () => {
    const kit = kitWith((draft) => void (defined(draft.modifiers.reflector).beamDeg = null));
    expect(keyWith({ featherDeg: 40 }, kit).beamIsAssumed).toBe(true);
    expect(keyWith({ featherDeg: 0 }, kit).beamIsAssumed).toBe(false);
    expect(keyWith({ bounce: bounced }, kit).beamIsAssumed).toBe(true);
    expect(keyWith({ bounce: bounced }).beamIsAssumed).toBe(false);
  });
});

describe('a bounced light', () => {
  test('costs what the surface costs, shines from its patch and is less well known', () => {
    const off = keyWith({ bounce: bounced, distanceM: 2 });
    // Of a 65° beam a wall of 0.8 keeps 2 · 0.8 · (1 − cos 32.5°) = 0.25 of the light straight from
    // there, a little less for the breadth of the patch: 2.0 to 2.4 stops.
    expect(off.bounce?.againstDirectStops).toBeLessThan(-2);
    expect(off.bounce?.againstDirectStops).toBeGreaterThan(-2.4);
    // 2 · tan 32.5°.
    expect(off.output.sourceDiameterM).toBeCloseTo(1.274, 3);
    expect(off.output.spreadStops).toBeCloseTo(Math.hypot(straight.output.spreadStops, 0.6), 9);
  });

  test('feathering is not counted on top: the surface’s own angle is', () => {
    const [plain, feathered] = [0, 60].map((featherDeg) =>
      keyWith({ bounce: bounced, featherDeg }),
    );
    expect(feathered?.output.lossStops).toBe(plain?.output.lossStops);
    expect(keyWith({ bounce: { ...bounced, exitDeg: 60 } }).output.lossStops).toBeGreaterThan(
      defined(plain).output.lossStops + 0.7,
    );
  });

  test('a tiny panel far from a wide beam still sends something back', () => {
    const off = keyWith({
      bounce: { ...bounced, headToSurfaceM: 20, panelSideM: 0.1 },
    });
    expect(Number.isFinite(off.output.lossStops)).toBe(true);
    expect(defined(off.bounce).caughtShare).toBeGreaterThan(0);
    expect(defined(off.bounce).caughtShare).toBeLessThan(1e-3);
  });
});

test('a cross light stands alone on its edge, as a rim does', () => {
  const setup = produce(defined(demoShoot().setups.quartet), (draft) => {
    Object.assign(defined(draft.lights.fill), { role: 'cross', stops: -0.3 });
  });
  const asked = setupQuestion(setup, spot, demoKit());
  expect(asked.ok && asked.value.lights.map(({ role }) => role)).toEqual(['key', 'rim']);
});
