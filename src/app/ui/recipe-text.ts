import { formatAperture, formatMeterAperture } from '../../core/exposure/aperture-scale.ts';
import { formatIso } from '../../core/exposure/iso-scale.ts';
import { densityFromStops, formatNd } from '../../core/exposure/lens-filter.ts';
import { formatShutter } from '../../core/exposure/shutter-scale.ts';
import type { Camera, Filter } from '../../core/plan/kit.ts';
import type { LightRole } from '../../core/plan/setup-schema.ts';
import type { FigureOrigin } from '../../core/strobe/head.ts';
import type { Recipe } from '../../core/strobe/recipe.ts';
import { ratioFromStops } from '../../core/units/stops.ts';
import { spreadText, tenths } from './figure-text.ts';

/** 'ND 3 stops (0.9), engraved ND8': the stops first, then what to look for on the ring. */
export function filterText({ kind, name, stops, engraving }: Filter): string {
  const what =
    kind === 'nd'
      ? formatNd(stops)
      : kind === 'variable-nd'
        ? `${name} at ${tenths(stops)} stops (${densityFromStops(stops).toFixed(1)})`
        : `${name}, ${tenths(stops)} stops`;
  return engraving.trim() === '' ? what : `${what}, engraved ${engraving.trim()}`;
}

export const filtersText = (filters: readonly Filter[]): string =>
  filters.length === 0 ? 'no filter' : filters.map(filterText).join(' + ');

/** '1/250 f/5.6' in the names of the camera's dials. */
export const shutterText = (shutterS: number, camera: Pick<Camera, 'step'> | undefined): string =>
  formatShutter(shutterS, camera?.step ?? 'third');
export const apertureText = (fNumber: number, camera: Pick<Camera, 'step'> | undefined): string =>
  formatAperture(fNumber, camera?.step ?? 'third');

/** '1/250, f/5.6, ISO 100, no filter' */
export const settingsText = (
  recipe: Pick<Recipe, 'shutterS' | 'fNumber' | 'iso'>,
  filters: readonly Filter[],
  camera: Pick<Camera, 'step'> | undefined,
): string =>
  [
    shutterText(recipe.shutterS, camera),
    apertureText(recipe.fNumber, camera),
    formatIso(recipe.iso),
    filtersText(filters),
  ].join(', ');

/** A meter's f-number as many stops away. */
export const meterText = (fNumber: number, stops = 0): string =>
  formatMeterAperture(fNumber * Math.sqrt(ratioFromStops(stops)));

/** 'metered ± 0.2' */
export const originText = (origin: FigureOrigin, spreadStops: number): string => {
  const spread = spreadText(spreadStops);
  switch (origin) {
    case 'metered':
      return `metered ${spread}`;
    case 'guide-number':
      return `guide number ${spread}`;
    case 'watt-seconds':
      return `watt-seconds, a guess ${spread}`;
  }
};

export const ROLE_NAMES: Readonly<Record<LightRole, string>> = {
  key: 'Key',
  fill: 'Fill',
  rim: 'Rim',
  background: 'Background light',
  cross: 'Cross light',
};
