import {
  GENERIC_BATTERIES,
  GENERIC_CAMERAS,
  GENERIC_FILTERS,
  GENERIC_KIT_GELS,
  GENERIC_HEADS,
  GENERIC_LENSES,
  GENERIC_KIT_MODIFIERS,
  GENERIC_STANDS,
} from './generic-kit.data.ts';
import { KIT_FORMAT, KIT_VERSION, type Kit } from './kit.ts';
import { inWrittenOrder } from './order-key.ts';

/** The kit of the demo shoot: two battery heads, one camera. Invented. */
export function demoKit(): Kit {
  return {
    format: KIT_FORMAT,
    version: KIT_VERSION,
    id: 'kit',
    cameras: inWrittenOrder({ camera: named(GENERIC_CAMERAS, 'Full frame, sync 1/250') }),
    lenses: inWrittenOrder({
      'lens-24-70': named(GENERIC_LENSES, '24–70 mm f/2.8'),
      'lens-85': named(GENERIC_LENSES, '85 mm f/1.8'),
    }),
    heads: inWrittenOrder({
      'head-600': {
        ...named(GENERIC_HEADS, 'Battery head, 600 Ws'),
        batteryId: 'battery-90',
        readings: {
          reflector: {
            fNumber: 32,
            iso: 100,
            distanceM: 2,
            ambientFNumber: null,
            powerStops: 0,
            diffuser: false,
            baffle: false,
            grid: false,
          },
        },
      },
      'head-400': { ...named(GENERIC_HEADS, 'Battery head, 400 Ws'), batteryId: 'battery-40' },
    }),
    modifiers: inWrittenOrder({
      reflector: named(GENERIC_KIT_MODIFIERS, 'Hard reflector, 18 cm'),
      octabox: named(GENERIC_KIT_MODIFIERS, 'Octabox, 95 cm'),
      umbrella: named(GENERIC_KIT_MODIFIERS, 'Silver umbrella, reflected, 110 cm'),
      'long-throw': named(GENERIC_KIT_MODIFIERS, 'Long-throw reflector, 35 cm'),
    }),
    filters: inWrittenOrder({
      'nd-2': named(GENERIC_FILTERS, 'ND 2 stops'),
      'nd-3': named(GENERIC_FILTERS, 'ND 3 stops'),
      polariser: named(GENERIC_FILTERS, 'Polariser'),
      'grad-2': named(GENERIC_FILTERS, 'Graduated ND, 2 stops'),
      'blue-80a': named(GENERIC_FILTERS, '80A blue'),
    }),
    gels: inWrittenOrder({
      'cto-full': named(GENERIC_KIT_GELS, 'Full CTO, family A'),
      'cto-half': named(GENERIC_KIT_GELS, '1/2 CTO, family A'),
    }),
    stands: inWrittenOrder({
      'stand-heavy': named(GENERIC_STANDS, 'Heavy stand, 3.8 m'),
      'stand-light': named(GENERIC_STANDS, 'Light stand, 2.6 m'),
    }),
    batteries: inWrittenOrder({
      'battery-90': named(GENERIC_BATTERIES, 'Head battery, 90 Wh'),
      'battery-40': named(GENERIC_BATTERIES, 'Head battery, 40 Wh'),
    }),
  };
}

function named<Entry extends { readonly name: string }>(
  entries: readonly Entry[],
  name: string,
): Entry {
  const entry = entries.find((one) => one.name === name);
  if (entry === undefined) throw new Error(`no generic kit entry is called ${name}`);
  return entry;
}
