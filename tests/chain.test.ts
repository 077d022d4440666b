import { describe, expect, test } from 'vitest';

import { demoShoot } from '../src/core/plan/demo-shoot.ts';
import type { SetupView, WorkingSetup } from '../src/core/plan/setup-view.ts';
import {
  demoInstantMs,
  expectedMinute,
  expectedMinutes,
} from './support/by-hand/expected-minutes.ts';
import type { Figure } from './support/by-hand/figures.ts';
import {
  ceilingsThere,
  landingThere,
  needsThere,
  popsThere,
  recycleThere,
  settingsEv,
  type SettingsThere,
} from './support/by-hand/recipe.ts';
import { skylineThere } from './support/by-hand/skyline.ts';
import { discShare } from './support/by-hand/subject.ts';
import { sunThere } from './support/by-hand/sun.ts';
import { figuresFound, lightOf, viewOf } from './support/chain-figures.ts';
import { defined } from './support/defined.ts';
import type { ErrorQuantity } from './support/error-quantities.ts';
import { largestError } from './support/largest-error.ts';

/*
 * Expected side: tests/support/by-hand, which takes the demo's documents as the question and
 * nothing of the app's physics for the answer. Its own formulas are checked against printed values
 * in tests/support/by-hand.test.ts.
 */
const [sunUp, dusk] = expectedMinutes();
const WORKING = [
  { minute: 'four on the pier head at 20:00, broken cloud, sun in the frame', expected: sunUp },
  { minute: 'four on the pier head with the sun at −3°, broken cloud', expected: dusk },
  {
    minute: 'two violins at 07:30, clear, sun at the side',
    expected: expectedMinute('two-violins', 'clear', demoInstantMs('07:30')),
  },
];
const SHORT = [
  {
    minute: 'four on the pier head at 19:00, clear, sun near the frame',
    expected: expectedMinute('quartet', 'clear', demoInstantMs('19:00')),
  },
  {
    minute: 'the cello at 16:30, clear, sun on the face',
    expected: expectedMinute('cello', 'clear', demoInstantMs('16:30')),
  },
];

const answerOf = (view: SetupView): WorkingSetup => {
  if (!view.answer.ok) throw new Error(`no recipe: ${view.answer.problem.kind}`);
  return view.answer.value;
};

/** Between two f-numbers. */
const stopsApart = (one: number, other: number): number => Math.abs(2 * Math.log2(one / other));

const settingsOf = ({ recipe }: WorkingSetup): SettingsThere => ({
  shutter: recipe.shutterS,
  fNumber: recipe.fNumber,
  iso: recipe.iso,
  filterStops: recipe.ndStops,
  powers: recipe.lights.map(({ powerStops }) => powerStops),
});

const chainRow = (quantity: ErrorQuantity) => ({
  quantity,
  method: 'the whole app, five minutes of the demo',
  comparedWith: 'worked by hand with another sun library, own sums, pixel projection',
});

/** Largest errors in print: light in percent, all else in the figure's own unit. */
const TRACKED: Readonly<
  Record<Figure['unit'], { readonly relative: boolean; readonly track: (error: number) => number }>
> = {
  '°': { relative: false, track: largestError('chain, sun', '°', chainRow('sun in the demo')) },
  lx: {
    relative: true,
    track: largestError('chain, illuminance', '%', chainRow('light in the demo')),
  },
  'cd/m²': { relative: true, track: largestError('chain, sky luminance', '%') },
  EV: { relative: false, track: largestError('chain, EV', 'EV', chainRow('EV in the demo')) },
  stops: {
    relative: false,
    track: largestError('chain, stops', 'stop', chainRow('hold and reach in the demo')),
  },
  share: { relative: false, track: largestError('chain, shares', '') },
  'yes or no': { relative: false, track: (error) => error },
};

const powerError = largestError(
  'chain, power of a head against need',
  'stop',
  chainRow('power of a head in the demo'),
);
const discError = largestError('chain, share of the disc over a ridge', '');

describe.each([...WORKING, ...SHORT])('$minute', ({ expected }) => {
  const found = figuresFound(expected);
  const view = viewOf(expected);

  test('both sides have the same figures', () => {
    expect(Object.keys(found).toSorted()).toEqual(Object.keys(expected.figures).toSorted());
  });

  test.each(Object.entries(expected.figures))(
    '%s is what the hand computation gives',
    (name, figure) => {
      const value = defined(found[name]);
      const error = value - figure.value;
      const shown = defined(TRACKED[figure.unit]);
      shown.track(shown.relative && figure.value !== 0 ? (100 * error) / figure.value : error);
      expect(
        Math.abs(error),
        `${name}: hand ${figure.value}, app ${value} ${figure.unit}`,
      ).toBeLessThanOrEqual(figure.tolerance);
    },
  );

  test('the default patch lies where the hand puts it', () => {
    const patch = defined(view.light.patch);
    const there = defined(expected.minute.frame.patchCentre);
    expect(patch.xFraction).toBeCloseTo(there.right, 6);
    expect(patch.yFraction).toBeCloseTo(there.up, 6);
    expect([patch.widthFraction, patch.heightFraction]).toEqual([0.1, 0.1]);
  });

  test('the setup stands in the same light as the spot at that minute', () => {
    const light = lightOf(expected);
    expect(view.light.skyInFrame).toEqual(light.skyInFrame);
    expect(view.light.subject).toEqual(light.subject);
  });
});

describe.each(WORKING)('the recipe of $minute', ({ expected }) => {
  const view = viewOf(expected);
  const answer = answerOf(view);
  const { recipe } = answer;
  const { asked } = expected.minute;
  const settings = settingsOf(answer);
  const landing = landingThere(asked, settings);

  test('the role that runs out first has the least ceiling', () => {
    const [first] = ceilingsThere(asked).toSorted((one, other) => one.ceiling - other.ceiling);
    expect(recipe.limitingRole).toBe(first?.role);
    expect(Math.abs(recipe.inHandStops - defined(first).inHand)).toBeLessThan(0.04);
  });

  test('from the settings alone sky, key, fill and unlit face land within a sixth of a stop of what was asked', () => {
    expect(Math.abs(landing.sky + asked.holdStops)).toBeLessThanOrEqual(1 / 6);
    asked.lights.forEach(({ stops }, place) =>
      expect(Math.abs(defined(landing.faces[place]) - stops)).toBeLessThanOrEqual(1 / 6),
    );
    expect(landing.unlit).toBeLessThanOrEqual(-view.setup.unlitUnderStops);
  });

  test('what the recipe says of sky and faces is where they land', () => {
    expect(Math.abs(recipe.cameraEv - settingsEv(settings))).toBeLessThan(0.002);
    expect(Math.abs(recipe.skyStops - landing.sky)).toBeLessThan(0.04);
    expect(Math.abs(recipe.unlitStops - landing.unlit)).toBeLessThan(0.03);
    const out = expected.minute.ambientOut - settingsEv(settings);
    expect(Math.abs(recipe.unlitOutStops - out)).toBeLessThan(0.03);
    asked.lights.forEach(({ role }, place) => {
      const said =
        role === 'key'
          ? recipe.keyStops
          : role === 'fill'
            ? recipe.fillStops
            : defined(recipe.lights[place]).levelStops;
      // The ambient's 0.03 stop counts for less where flash is most of the light.
      expect(Math.abs(defined(said) - defined(landing.faces[place]))).toBeLessThan(0.01);
    });
  });

  test('a meter reads what the light on the face gives at that shutter and ISO, no lens filter in it', () => {
    expect(stopsApart(recipe.meterFNumber, landing.meter)).toBeLessThan(0.01);
    expect(Math.abs(recipe.flashShare - landing.flashShare)).toBeLessThan(0.002);
    landing.flashMeters.forEach((alone, place) => {
      const light = defined(recipe.lights[place]);
      expect(stopsApart(light.flashMeterFNumber, alone)).toBeLessThan(0.002);
      if (light.role === 'rim') return;
      const ambient = settings.shutter * 2 ** asked.ambient * (settings.iso / 100);
      const total = Math.sqrt(alone ** 2 + ambient);
      expect(stopsApart(light.totalMeterFNumber, total)).toBeLessThan(0.01);
    });
  });

  test('each head stands within one step of the power that is needed', () => {
    needsThere(asked, settings).forEach(({ power }, place) => {
      const { step } = defined(expected.minute.heads[place]);
      expect(powerError(defined(settings.powers[place]) - power)).toBeLessThanOrEqual(step + 1e-9);
    });
  });

  test('recycling and pops per charge go with the power', () => {
    expected.minute.heads.forEach(({ recycle, pops }, place) => {
      const power = defined(settings.powers[place]);
      const pace = defined(answer.pace[place]);
      expect(Math.abs(pace.recycleS - recycleThere(recycle, power))).toBeLessThan(0.005);
      expect(Math.abs(pace.popsPerCharge - popsThere(pops, power))).toBeLessThanOrEqual(1);
    });
  });
});

describe.each(SHORT)('what ends $minute', ({ expected }) => {
  test('is the first rule that the hand finds broken, by as much', () => {
    const { answer } = viewOf(expected);
    if (answer.ok) throw new Error('expected a shortage, found a recipe');
    const { asked, hold, ambientOut } = expected.minute;
    const [first] = ceilingsThere(asked).toSorted((one, other) => one.inHand - other.inHand);
    const { role, inHand } = defined(first);
    const { kind, shortByStops } = answer.problem;
    if (inHand < 0) {
      expect([kind, answer.problem.role]).toEqual(['sky-above-reach', role]);
      expect(Math.abs(shortByStops + inHand)).toBeLessThan(0.04);
    } else {
      expect(kind).toBe('ambient-lights-the-face');
      const excess = ambientOut - hold.cameraEv + hold.unlitUnder;
      expect(excess).toBeGreaterThan(0);
      expect(Math.abs(shortByStops - excess)).toBeLessThan(0.05);
    }
  });
});

test('as the sun comes over the ridge of the karst edge its disc rises as the hand has it', () => {
  const { latitudeDeg, longitudeDeg, elevationM, skyline } = defined(demoShoot().spots.karst);
  const ridge = skylineThere(
    Object.values(skyline).map((point) => ({
      azimuth: point.azimuthDeg,
      altitude: point.altitudeDeg,
    })),
  );
  const shares = ['07:10', '07:12', '07:14', '07:16', '07:18'].map((clock) => {
    const instantMs = demoInstantMs(clock);
    const sun = sunThere(instantMs, latitudeDeg, longitudeDeg, elevationM);
    const share = discShare(ridge, { azimuth: sun.azimuth, altitude: sun.apparentAltitude });
    const { subject } = viewOf({ setupId: 'two-violins', condition: 'clear', instantMs }).light;
    // 0.02° of sun in a disc 0.54° wide.
    expect(discError(subject.discShare - share)).toBeLessThan(0.04);
    return share;
  });
  expect(shares.some((share) => share > 0.1 && share < 0.9)).toBe(true);
});
