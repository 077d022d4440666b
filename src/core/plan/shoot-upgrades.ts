import { fail, ok, type Result } from '../units/result.ts';

type Fields = Readonly<Record<string, unknown>>;

/** Turns a document of one version into one of the next; it sets no version itself and never changes its argument. */
export type UpgradeStep = (older: Fields) => Fields;

/** Version 2: spots know their ground, photos and readings; a shoot holds obstacles and imported outlines. */
const groundOfSpots: UpgradeStep = (older) => ({
  ...older,
  obstacles: {},
  outlineSets: {},
  spots: mapEntries(older.spots, (spot) => ({
    ...spot,
    skylineDated: '',
    terrain: null,
    surfaces: {},
    accessNote: '',
    toiletsNote: '',
    permissionNumber: '',
    permissionFrom: '',
    permissionUntil: '',
    permissionConditions: '',
    footTraffic: 'unknown',
    shelter: 'unknown',
    shelterNote: '',
    hazards: { water: false, traffic: false, height: false, lonely: false },
    contacts: {},
    checklist: {},
    photos: {},
    readings: {},
  })),
});

/** Version 3: setups know rows, skins, white balance, frames and weather; lights feathering, bounce, stands. */
const craftOfSetups: UpgradeStep = (older) => ({
  ...older,
  setups: mapEntries(older.setups, (setup) => ({
    ...setup,
    rows: 1,
    rowSpacingM: 0.8,
    pose: 'standing',
    darkestSkin: 0.12,
    lightestSkin: 0.45,
    whiteBalanceKelvin: 5600,
    whiteBalanceTint: 0,
    ambientKelvin: null,
    graduationFraction: 0,
    frames: 60,
    airC: 15,
    gustMS: null,
    lights: mapEntries(setup.lights, (light) => ({
      ...light,
      modifierSettingId: null,
      secondGelId: null,
      standId: null,
      featherDeg: 0,
      bounce: null,
    })),
  })),
});

/** Version 2: cameras know their autofocus and white balance, heads their colour and weight; stands and batteries are there. */
const craftOfKit: UpgradeStep = (older) => ({
  ...older,
  stands: {},
  batteries: {},
  cameras: mapEntries(older.cameras, (camera) => ({
    ...camera,
    autofocusLimitEv: -3,
    minKelvin: 2500,
    maxKelvin: 10_000,
    massKg: 0,
  })),
  lenses: mapEntries(older.lenses, (lens) => ({ ...lens, massKg: 0 })),
  heads: mapEntries(older.heads, (head) => ({
    ...head,
    flashKelvin: 5600,
    flashDurationLowestS: null,
    batteryId: null,
    burstPops: null,
    burstRestS: 0,
    massKg: 0,
  })),
  modifiers: mapEntries(older.modifiers, (modifier) => ({
    ...modifier,
    beamDeg: null,
    gridBeamDeg: null,
    settings: {},
    massKg: 0,
  })),
  filters: mapEntries(older.filters, (filter) => ({
    ...filter,
    maxStops: null,
    miredShift: 0,
    greenStops: 0,
    ringMm: 5,
  })),
  gels: mapEntries(older.gels, (gel) => ({ ...gel, greenStops: 0 })),
});

/** What is no map of entries is left as it is, for the check to name. */
const mapEntries = (entries: unknown, change: (entry: Fields) => Fields): unknown =>
  isFields(entries)
    ? Object.fromEntries(
        Object.entries(entries).map(([id, entry]) => [id, isFields(entry) ? change(entry) : entry]),
      )
    : entries;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The first step turns version 1 into 2, the second 2 into 3; version 1 is the first there is. */
export const SHOOT_STEPS: readonly UpgradeStep[] = [groundOfSpots, craftOfSetups];
export const KIT_STEPS: readonly UpgradeStep[] = [craftOfKit];

export type VersionProblem =
  | { readonly kind: 'no-version'; readonly found: unknown }
  | { readonly kind: 'newer'; readonly found: number; readonly readsUpTo: number }
  | { readonly kind: 'not-upgradable'; readonly from: number; readonly to: number };

/** Brings a document of any earlier version to the present one, step by step; what comes out is still to be checked. */
export function upgradeDocument(
  document: Fields,
  steps: readonly UpgradeStep[],
): Result<Fields, VersionProblem> {
  const { version } = document;
  const present = steps.length + 1;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return fail({ kind: 'no-version', found: version });
  if (version > present) return fail({ kind: 'newer', found: version, readsUpTo: present });
  let upgraded = document;
  for (let from = version; from < present; from += 1)
    try {
      upgraded = { ...steps[from - 1]?.(upgraded), version: from + 1 };
    } catch {
      return fail({ kind: 'not-upgradable', from, to: from + 1 });
    }
  return ok(upgraded);
}
