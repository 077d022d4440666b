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
export const SHOOT_STEPS: readonly UpgradeStep[] = [groundOfSpots];
export const KIT_STEPS: readonly UpgradeStep[] = [];

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
