import { formatMeterAperture, fNumberFromStops, stopsFromFNumber } from './aperture-scale.ts';
import { stopsFromIso } from './iso-scale.ts';
import { formatShutter, shutterFromStops, stopsFromShutter } from './shutter-scale.ts';

export type CameraSettings = {
  readonly shutterS: number;
  readonly fNumber: number;
  readonly iso: number;
  /** Everything in front of the lens together, stops. */
  readonly filterStops: number;
};

/**
 * EV at ISO 100 of the scene that these settings render as mid-grey:
 * log2(N²/t) − log2(ISO/100) + filter stops. [apex1961] [iso2720]
 */
export const cameraEv = (settings: CameraSettings): number =>
  stopsFromFNumber(settings.fNumber) -
  stopsFromShutter(settings.shutterS) -
  stopsFromIso(settings.iso) +
  settings.filterStops;

const FASTEST_SHOWN_STOPS = -8;
const WIDEST_SHOWN_STOPS = 3;

/**
 * An EV as a camera would show it at ISO 100 without filters: 'f/16 + 0.1 at 1/250'. The shutter
 * is 1/250 as long as that leaves f/2.8 or smaller, then slower by whole stops. [apex1961]
 */
export const formatEvAsSettings = (ev100: number): string => {
  const atFastestStops = Math.round(ev100 * 10) / 10 + FASTEST_SHOWN_STOPS;
  const slowerStops = Math.max(0, Math.ceil(WIDEST_SHOWN_STOPS - atFastestStops));
  const aperture = formatMeterAperture(fNumberFromStops(atFastestStops + slowerStops));
  const shutter = formatShutter(shutterFromStops(FASTEST_SHOWN_STOPS + slowerStops));
  return `${aperture} at ${shutter}, ISO 100`;
};
