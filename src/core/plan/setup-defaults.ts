import type { Light, Setup } from './setup-schema.ts';

/** What a setup asks before anything is decided: one posing person, the sky a stop under its patch. */
export const SETUP_DEFAULTS: Omit<
  Setup,
  'order' | 'name' | 'spotId' | 'startClock' | 'durationMin' | 'cameraId' | 'lensId'
> = {
  framing: null,
  patch: null,
  holdStops: 1,
  holdUnder: 'patch',
  unlitUnderStops: 2,
  people: 1,
  spacingM: 0.7,
  faceHeightM: 1.65,
  rows: 1,
  rowSpacingM: 0.8,
  pose: 'standing',
  darkestSkin: 0.12,
  lightestSkin: 0.45,
  spreadLimitStops: 0.33,
  motion: 'posing',
  tripod: false,
  shaded: false,
  wishFNumber: 5.6,
  lights: {},
  pinnedShutterS: null,
  pinnedFNumber: null,
  pinnedIso: null,
  pinnedFilterIds: null,
  whiteBalanceKelvin: 5600,
  whiteBalanceTint: 0,
  ambientKelvin: null,
  graduationFraction: 0,
  frames: 60,
  airC: 15,
  gustMS: null,
  clockPinned: false,
  holdPinned: false,
  framingPinned: false,
};

/** One head with nothing on its modifier and nothing pinned. */
export const LIGHT_DEFAULTS: Omit<
  Light,
  'order' | 'role' | 'headId' | 'modifierId' | 'distanceM' | 'angleDeg'
> = {
  stops: 0,
  headCount: 1,
  diffuser: false,
  baffle: false,
  grid: false,
  modifierSettingId: null,
  gelId: null,
  secondGelId: null,
  standId: null,
  featherDeg: 0,
  bounce: null,
  heightM: 2.3,
  pinnedPowerStops: null,
  distancePinned: false,
  modifierPinned: false,
};
