import { gelLossStops } from '../strobe/gel.ts';
import { GENERIC_GELS } from '../strobe/gel.data.ts';
import {
  GENERIC_ADD_ONS,
  GENERIC_MODIFIERS,
  type GenericModifier,
} from '../strobe/modifier.data.ts';
import type { Battery, Camera, Filter, Gel, Head, Lens, Modifier, Stand } from './kit.ts';

type Entry<Item> = Omit<Item, 'order'>;

/**
 * Generic kit entries to start from. Sizes, sync speeds, pops and recycle times are typical of the
 * class, common practice; a user's own figures replace them. Modifier losses are the middle and
 * half the width of the ranges in circulation, guide numbers those of a standard reflector.
 * [practitionerPages] [lightingPractice]
 */
export const GENERIC_CAMERAS: readonly Entry<Camera>[] = [
  camera('Full frame, sync 1/250', 36, 24, 1 / 250),
  camera('Full frame, sync 1/200', 36, 24, 1 / 200),
  camera('APS-C, sync 1/250', 23.5, 15.6, 1 / 250),
  camera('APS-C, sync 1/180', 23.5, 15.6, 1 / 180),
  camera('Four Thirds, sync 1/250', 17.3, 13, 1 / 250),
  camera('Medium format 44 × 33, sync 1/125', 43.8, 32.9, 1 / 125),
];

function camera(
  name: string,
  sensorWidthMm: number,
  sensorHeightMm: number,
  syncShutterS: number,
): Entry<Camera> {
  return {
    name,
    sensorWidthMm,
    sensorHeightMm,
    syncShutterS,
    fastestShutterS: 1 / 8000,
    slowestShutterS: 30,
    baseIso: 100,
    maxIso: 6400,
    step: 'third',
    autofocusLimitEv: -3,
    minKelvin: 2500,
    maxKelvin: 10_000,
    massKg: 0.7,
  };
}

export const GENERIC_LENSES: readonly Entry<Lens>[] = [
  lens('16–35 mm f/2.8', 16, 35, 2.8, 82, 0.8),
  lens('24–70 mm f/2.8', 24, 70, 2.8, 82, 0.9),
  lens('70–200 mm f/2.8', 70, 200, 2.8, 77, 1.4),
  lens('35 mm f/1.4', 35, 35, 1.4, 67, 0.6),
  lens('50 mm f/1.4', 50, 50, 1.4, 67, 0.6),
  lens('85 mm f/1.8', 85, 85, 1.8, 67, 0.4),
  { ...lens('80 mm f/2.8, leaf shutter 1/800', 80, 80, 2.8, 72, 0.5), leafShutterS: 1 / 800 },
];

function lens(
  name: string,
  minFocalLengthMm: number,
  maxFocalLengthMm: number,
  minFNumber: number,
  threadMm: number,
  massKg: number,
): Entry<Lens> {
  return {
    name,
    minFocalLengthMm,
    maxFocalLengthMm,
    minFNumber,
    maxFNumber: 22,
    threadMm,
    leafShutterS: null,
    massKg,
  };
}

export const GENERIC_HEADS: readonly Entry<Head>[] = [
  head('Small flash, 76 Ws', 76, 36, {
    minPowerStops: -7,
    recycleS: 2.9,
    popsPerCharge: 150,
    massKg: 0.5,
  }),
  head('Battery head, 200 Ws', 200, 38, {
    minPowerStops: -8,
    recycleS: 1.8,
    popsPerCharge: 320,
    massKg: 1.4,
  }),
  head('Battery head, 400 Ws', 400, 54, {
    minPowerStops: -8,
    recycleS: 1.2,
    popsPerCharge: 380,
    massKg: 2.1,
  }),
  head('Battery head, 600 Ws', 600, 66, {
    minPowerStops: -8,
    recycleS: 1.1,
    popsPerCharge: 330,
    massKg: 3,
  }),
  head('Battery pack and head, 1200 Ws', 1200, 94, {
    minPowerStops: -9,
    recycleS: 2.6,
    popsPerCharge: 220,
    massKg: 8,
  }),
];

function head(
  name: string,
  energyWs: number,
  guideNumberM: number,
  pace: Pick<Head, 'minPowerStops' | 'recycleS' | 'popsPerCharge' | 'massKg'>,
): Entry<Head> {
  return {
    name,
    owned: 1,
    energyWs,
    guideNumberM,
    readings: {},
    scale: 'fraction',
    fullPowerNumber: 10,
    stepStops: 0.1,
    hssLossStops: 2,
    hssMeasured: false,
    flashDurationS: null,
    flashDurationLowestS: null,
    burstPops: null,
    burstRestS: 0,
    batteryId: null,
    flashKelvin: 5600,
    ...pace,
  };
}

/** A box without diffuser against the standard reflector, common practice. [lightingPractice] */
const BARE_BOX_STOPS = 0.1;

export const GENERIC_KIT_MODIFIERS: readonly Entry<Modifier>[] = [
  modifier('Hard reflector, 18 cm', GENERIC_MODIFIERS['standard-reflector'], {
    gridStops: GENERIC_ADD_ONS['grid-20'].lossStops.middle,
    beamDeg: 65,
    gridBeamDeg: 20,
    massKg: 0.4,
  }),
  modifier('Long-throw reflector, 35 cm', GENERIC_MODIFIERS['long-throw-reflector'], {
    beamDeg: 35,
    massKg: 1.1,
  }),
  modifier('Bare head', GENERIC_MODIFIERS['bare-head'], { beamDeg: 170 }),
  modifier('Beauty dish, 55 cm', GENERIC_MODIFIERS['beauty-dish'], {
    diffuserStops: GENERIC_ADD_ONS['second-diffuser'].lossStops.middle,
    gridStops: GENERIC_ADD_ONS['fabric-grid'].lossStops.middle,
    beamDeg: 80,
    gridBeamDeg: 40,
    massKg: 1.2,
  }),
  modifier('White umbrella, reflected, 110 cm', GENERIC_MODIFIERS['umbrella-white'], {
    beamDeg: 100,
    massKg: 0.6,
  }),
  modifier('White umbrella, shot through, 110 cm', GENERIC_MODIFIERS['umbrella-shoot-through'], {
    beamDeg: 100,
    massKg: 0.6,
  }),
  modifier('Silver umbrella, reflected, 110 cm', GENERIC_MODIFIERS['umbrella-silver'], {
    beamDeg: 100,
    massKg: 0.6,
  }),
  softbox('Softbox, 60 × 60 cm', 0.6, 0.6, false),
  softbox('Softbox, 60 × 90 cm', 0.6, 0.9, false),
  softbox('Strip box, 30 × 120 cm', 0.3, 1.2, false),
  softbox('Octabox, 95 cm', 0.95, 0.95, true),
  softbox('Octabox, 150 cm', 1.5, 1.5, true),
];

/** A box bare of its removable parts, from the losses with one and with two diffusers. */
function softbox(name: string, widthM: number, heightM: number, round: boolean): Entry<Modifier> {
  const one = GENERIC_MODIFIERS['softbox-one-diffuser'];
  const two = GENERIC_MODIFIERS['softbox-two-diffusers'];
  return {
    ...modifier(
      name,
      { ...one, widthM, heightM, round },
      {
        diffuserStops: one.lossStops.middle - BARE_BOX_STOPS,
        baffleStops: two.lossStops.middle - one.lossStops.middle,
        gridStops: GENERIC_ADD_ONS['fabric-grid'].lossStops.middle,
        beamDeg: 90,
        gridBeamDeg: 40,
        massKg: Math.round(20 * widthM * heightM) / 10 + 0.5,
      },
    ),
    lossStops: BARE_BOX_STOPS,
  };
}

function modifier(
  name: string,
  generic: GenericModifier,
  parts: Partial<
    Pick<
      Modifier,
      'diffuserStops' | 'baffleStops' | 'gridStops' | 'beamDeg' | 'gridBeamDeg' | 'massKg'
    >
  > = {},
): Entry<Modifier> {
  const { low, middle, high } = generic.lossStops;
  return {
    name,
    lossStops: middle,
    lossSpreadStops: (high - low) / 2,
    widthM: generic.widthM,
    heightM: generic.heightM,
    round: generic.round,
    diffuserStops: null,
    baffleStops: null,
    gridStops: null,
    beamDeg: null,
    gridBeamDeg: null,
    settings: {},
    massKg: 0,
    ...parts,
  };
}

export const GENERIC_FILTERS: readonly Entry<Filter>[] = [
  filter('ND 1 stop', 'nd', 1, '0.3'),
  filter('ND 2 stops', 'nd', 2, 'ND4'),
  filter('ND 3 stops', 'nd', 3, '0.9'),
  filter('ND 4 stops', 'nd', 4, '1.2'),
  filter('ND 6 stops', 'nd', 6, 'ND64'),
  { ...filter('Variable ND, 2 to 5 stops', 'variable-nd', 2, '2-5 stops'), maxStops: 5 },
  filter('Graduated ND, 2 stops', 'graduated-nd', 2, '0.6'),
  filter('Polariser', 'polariser', 1.5, 'CPL'),
  { ...filter('80A blue', 'colour', 2, '80A'), miredShift: -131 },
  { ...filter('85B orange', 'colour', 0.67, '85B'), miredShift: 131 },
  { ...filter('Magenta 30', 'colour', 0.5, 'CC30M'), greenStops: -0.7 },
];

function filter(
  name: string,
  kind: Filter['kind'],
  stops: number,
  engraving: string,
): Entry<Filter> {
  return {
    name,
    kind,
    stops,
    maxStops: null,
    miredShift: 0,
    greenStops: 0,
    ringMm: 5,
    engraving,
    threadMm: 82,
  };
}

/** Both families of the swatch books; the shift decides, not the name. [practitionerPages] */
export const GENERIC_KIT_GELS: readonly Entry<Gel>[] = GENERIC_GELS.map((gel) => ({
  name: `${gel.name}, family ${gel.family}`,
  stops: Math.round(gelLossStops(gel) * 100) / 100,
  miredShift: gel.miredShift,
  greenStops: 0,
}));

export const GENERIC_STANDS: readonly Entry<Stand>[] = [
  stand('Light stand, 2.6 m', 2.6, 0.5, 1.6, 8),
  stand('Heavy stand, 3.8 m', 3.8, 0.65, 3.4, 10),
  stand('Boom stand with wheels locked, 3 m', 3, 0.6, 8, 6),
];

function stand(
  name: string,
  maxHeightM: number,
  legSpreadM: number,
  massKg: number,
  maxGustMS: number,
): Entry<Stand> {
  return { name, owned: 1, maxHeightM, legSpreadM, legs: 3, massKg, maxGustMS };
}

export const GENERIC_BATTERIES: readonly Entry<Battery>[] = [
  { name: 'Set of four cells, 10 Wh', owned: 2, wattHours: 10, massKg: 0.12 },
  { name: 'Head battery, 40 Wh', owned: 1, wattHours: 40, massKg: 0.35 },
  { name: 'Head battery, 90 Wh', owned: 1, wattHours: 90, massKg: 0.8 },
  { name: 'Pack battery, 300 Wh', owned: 1, wattHours: 300, massKg: 3.2 },
];
