import type { Spot } from './shoot.ts';

/** A spot of which nothing is known: flat skyline, ground of 20 %, no notes. */
export const SPOT_DEFAULTS: Omit<
  Spot,
  'order' | 'name' | 'latitudeDeg' | 'longitudeDeg' | 'elevationM' | 'zone' | 'framing'
> = {
  skyline: {},
  skylineOrigin: '',
  skylineDated: '',
  terrain: null,
  groundReflectance: 0.2,
  groundNote: '',
  surfaces: {},
  accessNote: '',
  parkingNote: '',
  walkInMin: 0,
  toiletsNote: '',
  permission: 'unknown',
  permissionNote: '',
  permissionNumber: '',
  permissionFrom: '',
  permissionUntil: '',
  permissionConditions: '',
  footTraffic: 'unknown',
  footTrafficNote: '',
  shelter: 'unknown',
  shelterNote: '',
  windNote: '',
  powerNote: '',
  hazards: { water: false, traffic: false, height: false, lonely: false },
  hazardsNote: '',
  contacts: {},
  checklist: {},
  photos: {},
  readings: {},
};
