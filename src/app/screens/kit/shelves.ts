import type { KitShelf } from '../../../core/plan/kit.ts';

export const SHELVES: Readonly<Record<KitShelf, { title: string; one: string; note: string }>> = {
  heads: {
    title: 'Heads',
    one: 'head',
    note: 'One metered shot at a known distance beats any guide number or watt-second figure, which are off by about a stop.',
  },
  modifiers: {
    title: 'Modifiers',
    one: 'modifier',
    note: 'Losses count against the reflector the guide number was rated with; a metered shot through the modifier replaces them.',
  },
  cameras: {
    title: 'Cameras',
    one: 'camera',
    note: 'The sync shutter decides how far the lights reach: a stop of sync is a stop of reach.',
  },
  lenses: {
    title: 'Lenses',
    one: 'lens',
    note: 'A leaf shutter in the lens syncs at every speed it has.',
  },
  filters: {
    title: 'Filters',
    one: 'filter',
    note: 'On the lens. They dim sky and flash alike; a recipe uses only the ND filters here.',
  },
  gels: {
    title: 'Gels',
    one: 'gel',
    note: 'On the head. They cost flash only; the shift decides the colour, not the name.',
  },
  stands: {
    title: 'Stands',
    one: 'stand',
    note: 'With leg spread, weight and your own limit: what a gust asks for in ballast is an estimate, not an approval.',
  },
  batteries: {
    title: 'Batteries',
    one: 'battery',
    note: 'Watt-hours decide what may fly: carriers ask above 100 Wh and refuse above 160 Wh; ask yours.',
  },
};
