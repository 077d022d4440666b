import type { Spot } from './shoot.ts';

/** A spot of which nothing is known: flat skyline, ground of 20 %, no notes. */
export const SPOT_DEFAULTS: Omit<
  Spot,
  'order' | 'name' | 'latitudeDeg' | 'longitudeDeg' | 'elevationM' | 'zone' | 'framing'
> = {
  skyline: {},
  skylineOrigin: '',
  groundReflectance: 0.2,
  groundNote: '',
  parkingNote: '',
  walkInMin: 0,
  permission: 'unknown',
  permissionNote: '',
  footTrafficNote: '',
  windNote: '',
  powerNote: '',
  hazardsNote: '',
};
