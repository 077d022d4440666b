import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import type { Kit } from '../../../src/core/plan/kit.ts';
import type { PackedItem } from '../../../src/core/plan/packed-items.ts';
import { packingList, type PackingList } from '../../../src/core/plan/packing-list.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import { defined } from '../../support/defined.ts';

const packed = (
  editShoot: (shoot: Shoot) => void = () => undefined,
  editKit: (kit: Kit) => void = () => undefined,
): PackingList => packingList(produce(demoShoot(), editShoot), produce(demoKit(), editKit));

const item = (list: PackingList, id: string, part: PackedItem['part'] = null): PackedItem =>
  defined(list.items.find((one) => one.id === id && one.part === part));

const filters = (of: PackingList): readonly string[] =>
  of.items.filter(({ shelf }) => shelf === 'filters').map(({ id }) => id);

const quartet = (shoot: Shoot) => defined(shoot.setups['quartet']);

describe('the packing list of the demo', () => {
  const list = packed();

  test('counts of each thing what is in use at once, not what all setups add up to', () => {
    // The 600 Ws head is in all four setups, one at a time.
    expect(item(list, 'head-600').count).toBe(1);
    expect(item(list, 'camera').count).toBe(1);
    expect(list.items.filter(({ shelf }) => shelf === 'modifiers').map(({ id }) => id)).toEqual(
      expect.arrayContaining(['reflector', 'octabox', 'umbrella', 'long-throw']),
    );
  });

  test('takes the diffuser of the box along, and no grid that nobody uses', () => {
    expect(item(list, 'octabox', 'diffuser').count).toBe(1);
    expect(list.items.some(({ part }) => part === 'grid')).toBe(false);
  });

  test('weighs what has a weight, batteries with it', () => {
    // 0.7 body, 0.9 lens, 3 and 2.1 heads, reflector 0.4, box 20·0.95²/10 rounded + 0.5,
    // umbrella 0.6, long throw 1.1, one battery of 0.8 and one of 0.35.
    const box = Math.round(20 * 0.95 * 0.95) / 10 + 0.5;
    expect(list.totalKg).toBeCloseTo(0.7 + 0.9 + 3 + 2.1 + 0.4 + box + 0.6 + 1.1 + 0.8 + 0.35, 6);
  });

  test('lists the ND of its recipes, and a pinned filter instead where one is pinned', () => {
    const pinned = packed((shoot) => {
      for (const setup of Object.values(shoot.setups)) setup.pinnedFilterIds = { polariser: true };
    });
    expect(filters(pinned)).toEqual(['polariser']);
    expect(filters(list)).not.toContain('polariser');
  });
});

describe('what a packing list finds lacking', () => {
  test('two heads at once of which one is owned', () => {
    const list = packed((shoot) => {
      defined(quartet(shoot).lights['key']).headCount = 2;
    });
    expect(item(list, 'head-600')).toMatchObject({ count: 2, owned: 1 });
    expect(item(list, 'reflector')).toMatchObject({ count: 2, owned: null });
  });

  test('something that is no longer in the kit stays on the list without a name', () => {
    const list = packed(undefined, (kit) => void delete kit.modifiers['umbrella']);
    expect(item(list, 'umbrella')).toMatchObject({ name: null, massKg: null });
  });

  test('heads that nothing carries are counted', () => {
    expect(packed().withoutStand).toBe(2);
  });
});

/** The worked box of 0.8 m² at 2.2 m on legs of half a metre, nothing else weighing. */
const inWind = (gustMS: number | null, maxGustMS = 12): PackingList =>
  packed(
    (shoot) => {
      for (const id of Object.keys(shoot.setups)) if (id !== 'cello') delete shoot.setups[id];
      const cello = defined(shoot.setups['cello']);
      cello.gustMS = gustMS;
      Object.assign(defined(cello.lights['key']), { standId: 'stand-light', heightM: 2.2 });
    },
    (kit) => {
      Object.assign(defined(kit.stands['stand-light']), {
        legSpreadM: 0.5,
        massKg: 0,
        maxGustMS,
      });
      defined(kit.heads['head-600']).massKg = 0;
      Object.assign(defined(kit.modifiers['octabox']), {
        widthM: 0.8,
        heightM: 1,
        round: false,
        massKg: 0,
      });
    },
  );

describe('ballast of a packing list', () => {
  test.each([
    [5, 13],
    [8, 34],
    [10, 53],
  ])(
    'gusts of %d m/s: half of the %d kg at the middle when hung on the leg',
    (gustMS, middleKg) => {
      // Printed for the middle of the stand; on the leg half way out the lever is twice as long.
      const { ballast } = inWind(gustMS);
      expect(ballast?.gustMS).toBe(gustMS);
      expect(Math.abs(defined(ballast ?? undefined).kg - middleKg / 2)).toBeLessThan(0.5);
    },
  );

  test('no kilogram without a wind', () => {
    const list = inWind(null);
    expect(list.ballast).toBeNull();
    expect(list.windNotKnown).toEqual(['Cello, side light']);
  });

  test('a gust above the limit keeps the stand down instead', () => {
    const list = inWind(10, 8);
    expect(list.ballast).toBeNull();
    expect(list.aboveLimit).toEqual(['Cello, side light']);
  });
});

const flown = (wattHours: number, frames: number) => {
  const list = packed(
    (shoot) => {
      for (const setup of Object.values(shoot.setups)) setup.frames = frames;
    },
    (kit) => {
      defined(kit.batteries['battery-90']).wattHours = wattHours;
      defined(kit.heads['head-600']).popsPerCharge = 20;
    },
  );
  return defined(list.batteries.find(({ batteryId }) => batteryId === 'battery-90'));
};

describe('batteries of a packing list against what may fly', () => {
  test('a heap of 130 Wh batteries asks the carrier and is too much for one passenger', () => {
    const battery = flown(130, 400);
    expect(battery.airClass).toBe('ask-carrier');
    // All but the one in the head are spares; two may come.
    expect(battery.sparesTooMany).toBe(battery.needed - 1 - 2);
    expect(battery.sparesTooMany).toBeGreaterThan(0);
  });

  test('90 Wh fly in the cabin, 300 Wh do not', () => {
    expect(flown(90, 60)).toMatchObject({ airClass: 'cabin', sparesTooMany: 0 });
    expect(flown(300, 60).airClass).toBe('not-in-cabin');
  });
});
