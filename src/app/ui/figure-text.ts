import { formatEvAsSettings } from '../../core/exposure/camera-settings.ts';

/** '16.1', '−3.0': a true minus, one digit. */
export const tenths = (value: number): string => {
  const text = Math.abs(value) < 0.05 ? '0.0' : value.toFixed(1);
  return text.replace('-', '−');
};

/** '+0.9', '−2.0', '0.0'. */
export const signedTenths = (value: number): string =>
  value >= 0.05 ? `+${tenths(value)}` : tenths(value);

export const evText = (ev100: number): string =>
  Number.isFinite(ev100) ? `EV ${tenths(ev100)}` : 'no light';

/** 'f/16 + 0.1 at 1/250, ISO 100' */
export const evAsSettings = (ev100: number): string =>
  Number.isFinite(ev100) ? formatEvAsSettings(ev100) : 'nothing to expose for';

export const spreadText = (spreadStops: number): string => `± ${tenths(spreadStops)}`;

/** '2.4 m' */
export const metres = (distanceM: number): string =>
  `${distanceM >= 10 ? distanceM.toFixed(0) : distanceM.toFixed(2).replace(/0$/, '')} m`;

const COMPASS = [
  'N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW',
] as const; // prettier-ignore

/** '300° WNW' */
export const bearingText = (bearingDeg: number): string =>
  `${Math.round(bearingDeg) % 360}° ${COMPASS[Math.round(bearingDeg / 22.5) % 16] ?? 'N'}`;

/** 'in hand 0.4', 'short by 1.2' */
export const inHandText = (inHandStops: number): string =>
  inHandStops >= 0 ? `${tenths(inHandStops)} in hand` : `short by ${tenths(-inHandStops)}`;

/** '350 g', '2.1 kg', '14 kg' */
export const kilograms = (massKg: number): string => {
  if (massKg < 0.9995) return `${Math.round(1000 * massKg)} g`;
  return `${massKg < 9.95 ? massKg.toFixed(1) : massKg.toFixed(0)} kg`;
};
