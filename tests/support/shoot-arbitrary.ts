import fc from 'fast-check';

import { SKY_CONDITIONS } from '../../src/core/daylight/sky-condition.ts';
import type { Kit } from '../../src/core/plan/kit.ts';
import { FILTER_KINDS, POWER_SCALES } from '../../src/core/plan/kit.ts';
import { HOLD_REFERENCES, MOTIONS, POSES, ROLES } from '../../src/core/plan/setup-schema.ts';
import { type Shoot } from '../../src/core/plan/shoot.ts';
import {
  record,
  number,
  positive,
  whole,
  orNull,
  id,
  order,
  name,
  mapOf,
  filled,
} from './field-arbitraries.ts';
import { framing, obstacle, outlineSet, spot } from './ground-arbitrary.ts';

const camera = record({
  order,
  name,
  sensorWidthMm: number(4, 120),
  sensorHeightMm: number(3, 100),
  syncShutterS: number(1 / 4000, 1 / 30),
  fastestShutterS: number(1 / 64000, 1 / 250),
  slowestShutterS: number(1 / 60, 900),
  baseIso: number(25, 1600),
  maxIso: number(100, 409600),
  step: fc.constantFrom('third' as const, 'half' as const),
  autofocusLimitEv: number(-10, 5),
  minKelvin: number(1500, 6000),
  maxKelvin: number(5000, 20000),
  massKg: number(0, 20),
});

const lens = record({
  order,
  name,
  minFocalLengthMm: number(4, 2000),
  maxFocalLengthMm: number(4, 2000),
  minFNumber: number(0.7, 64),
  maxFNumber: number(0.7, 128),
  threadMm: orNull(number(20, 200)),
  leafShutterS: orNull(number(1 / 4000, 1 / 30)),
  massKg: number(0, 20),
});

const head = record({
  order,
  name,
  owned: whole(1, 20),
  energyWs: orNull(positive(10000)),
  guideNumberM: orNull(positive(400)),
  readings: mapOf(
    record({
      fNumber: number(0.7, 256),
      iso: number(3, 409600),
      distanceM: number(0.2, 30),
      ambientFNumber: orNull(number(0.1, 256)),
      powerStops: number(-12, 0),
      diffuser: fc.boolean(),
      baffle: fc.boolean(),
      grid: fc.boolean(),
    }),
  ),
  scale: fc.constantFrom(...POWER_SCALES),
  fullPowerNumber: number(1, 20),
  stepStops: number(0.1, 1),
  minPowerStops: number(-12, 0),
  hssLossStops: orNull(number(0, 5)),
  hssMeasured: fc.boolean(),
  flashDurationS: orNull(number(1e-5, 1 / 20)),
  flashDurationLowestS: orNull(number(1e-6, 1 / 20)),
  burstPops: orNull(whole(1, 10000)),
  burstRestS: number(0, 3600),
  batteryId: orNull(id),
  flashKelvin: number(3000, 8000),
  massKg: number(0, 50),
  recycleS: number(0.05, 60),
  popsPerCharge: whole(1, 100000),
});

const modifier = record({
  order,
  name,
  lossStops: number(-4, 8),
  lossSpreadStops: number(0, 3),
  widthM: number(0.02, 5),
  heightM: number(0.02, 5),
  round: fc.boolean(),
  diffuserStops: orNull(number(0, 4)),
  baffleStops: orNull(number(0, 4)),
  gridStops: orNull(number(0, 6)),
  beamDeg: orNull(number(2, 180)),
  gridBeamDeg: orNull(number(2, 180)),
  settings: mapOf(record({ order, name, beamDeg: number(2, 180), stops: number(-6, 6) })),
  massKg: number(0, 50),
});

const filter = record({
  order,
  name,
  kind: fc.constantFrom(...FILTER_KINDS),
  stops: number(0, 20),
  maxStops: orNull(number(0, 20)),
  miredShift: number(-400, 400),
  greenStops: number(-3, 3),
  ringMm: number(0, 30),
  engraving: fc.string({ maxLength: 12 }),
  threadMm: orNull(number(20, 200)),
});

const gel = record({
  order,
  name,
  stops: number(0, 8),
  miredShift: number(-400, 400),
  greenStops: number(-3, 3),
});

const stand = record({
  order,
  name,
  owned: whole(1, 20),
  maxHeightM: number(0.2, 12),
  legSpreadM: number(0.1, 3),
  legs: fc.constantFrom(3 as const, 4 as const),
  massKg: number(0, 100),
  maxGustMS: number(1, 40),
});

const battery = record({
  order,
  name,
  owned: whole(1, 50),
  wattHours: number(0.1, 5000),
  massKg: number(0, 50),
});

/** A kit that keeps its schema, with at least one item on every shelf. */
export const kitArbitrary: fc.Arbitrary<Kit> = record({
  format: fc.constant('undersky-kit' as const),
  version: fc.constant(2 as const),
  id,
  cameras: filled(camera),
  lenses: filled(lens),
  heads: filled(head),
  modifiers: filled(modifier),
  filters: filled(filter),
  gels: filled(gel),
  stands: filled(stand),
  batteries: filled(battery),
});

const lightFrom = (kit: Kit): fc.Arbitrary<Shoot['setups'][string]['lights'][string]> =>
  record({
    order,
    role: fc.constantFrom(...ROLES),
    stops: number(-8, 4),
    headId: oneOf(kit.heads),
    headCount: whole(1, 20),
    modifierId: oneOf(kit.modifiers),
    diffuser: fc.boolean(),
    baffle: fc.boolean(),
    grid: fc.boolean(),
    modifierSettingId: orNull(id),
    gelId: orNull(oneOf(kit.gels)),
    secondGelId: orNull(oneOf(kit.gels)),
    standId: orNull(oneOf(kit.stands)),
    featherDeg: number(0, 80),
    bounce: orNull(
      record({
        reflectance: number(0.01, 0.95),
        colour: fc.constantFrom('', 'c8b49a'),
        headToSurfaceM: number(0.1, 20),
        incidenceDeg: number(0, 80),
        exitDeg: number(0, 80),
        panelSideM: orNull(number(0.1, 20)),
      }),
    ),
    distanceM: number(0.2, 30),
    angleDeg: number(-180, 180),
    heightM: number(0, 8),
    pinnedPowerStops: orNull(number(-12, 0)),
    distancePinned: fc.boolean(),
    modifierPinned: fc.boolean(),
  });

const setupFrom = (kit: Kit, spots: Shoot['spots']): fc.Arbitrary<Shoot['setups'][string]> =>
  record({
    order,
    name,
    spotId: oneOf(spots),
    startClock: fc.constantFrom('00:00', '19:30', '23:59'),
    durationMin: whole(5, 720),
    framing: orNull(framing),
    patch: orNull(
      record({
        xFraction: number(-0.5, 0.5),
        yFraction: number(-0.5, 0.5),
        widthFraction: positive(1),
        heightFraction: positive(1),
      }),
    ),
    holdStops: number(-3, 10),
    holdUnder: fc.constantFrom(...HOLD_REFERENCES),
    unlitUnderStops: number(0, 8),
    people: whole(1, 20),
    spacingM: number(0.2, 5),
    faceHeightM: number(0.3, 4),
    rows: whole(1, 5),
    rowSpacingM: number(0.2, 5),
    pose: fc.constantFrom(...POSES),
    darkestSkin: number(0.03, 0.9),
    lightestSkin: number(0.03, 0.9),
    spreadLimitStops: positive(3),
    motion: fc.constantFrom(...MOTIONS),
    tripod: fc.boolean(),
    shaded: fc.boolean(),
    cameraId: oneOf(kit.cameras),
    lensId: oneOf(kit.lenses),
    wishFNumber: number(0.7, 64),
    lights: mapOf(lightFrom(kit)),
    pinnedShutterS: orNull(positive(900)),
    pinnedFNumber: orNull(number(0.7, 128)),
    pinnedIso: orNull(number(25, 409600)),
    pinnedFilterIds: orNull(
      fc.dictionary(oneOf(kit.filters), fc.constant(true as const), {
        maxKeys: 2,
        noNullPrototype: true,
      }),
    ),
    whiteBalanceKelvin: number(2000, 15000),
    whiteBalanceTint: number(-50, 50),
    ambientKelvin: orNull(number(1800, 25000)),
    graduationFraction: number(-0.5, 0.5),
    frames: whole(1, 5000),
    airC: number(-30, 45),
    gustMS: orNull(number(0, 40)),
    clockPinned: fc.boolean(),
    holdPinned: fc.boolean(),
    framingPinned: fc.boolean(),
  });

const oneOf = (entries: Readonly<Record<string, unknown>>): fc.Arbitrary<string> =>
  fc.constantFrom(...Object.keys(entries));

/** A shoot that keeps its schema and a kit that has everything it names, and more. */
export const shootWithKitArbitrary: fc.Arbitrary<{ readonly shoot: Shoot; readonly kit: Kit }> = fc
  .tuple(kitArbitrary, filled(spot))
  .chain(([kit, spots]) =>
    record({
      format: fc.constant('undersky-shoot' as const),
      version: fc.constant(3 as const),
      id,
      title: name,
      date: fc.constantFrom('2027-05-14', '2028-02-29', '2011-12-30'),
      condition: fc.constantFrom(...SKY_CONDITIONS),
      spots: fc.constant(spots),
      obstacles: mapOf(obstacle),
      outlineSets: mapOf(outlineSet, 1),
      setups: mapOf(setupFrom(kit, spots)),
    }).map((shoot) => ({ shoot, kit })),
  );
