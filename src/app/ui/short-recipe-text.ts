import { formatAperture } from '../../core/exposure/aperture-scale.ts';
import { formatIso } from '../../core/exposure/iso-scale.ts';
import { formatNd } from '../../core/exposure/lens-filter.ts';
import { formatShutter } from '../../core/exposure/shutter-scale.ts';
import type { DialStep } from '../../core/exposure/dial-scale.ts';
import type { Filter } from '../../core/plan/kit.ts';
import type { SetupView, WorkingSetup } from '../../core/plan/setup-view.ts';
import { powerText } from './power-text.ts';

/** '1/250 f/4.5' */
export const dialsText = ({ recipe }: WorkingSetup, step: DialStep): string =>
  `${formatShutter(recipe.shutterS, step)} ${formatAperture(recipe.fNumber, step)}`;

/** 'ISO 100, ND 4 stops (1.2)' */
export function isoAndFiltersText({ recipe, filters }: WorkingSetup): string {
  return [formatIso(recipe.iso), ...filterTexts(filters)].join(', ');
}

const isNd = ({ kind }: Filter): boolean => kind === 'nd' || kind === 'variable-nd';

/** ND together, every other filter by its name. */
function filterTexts(filters: readonly Filter[]): readonly string[] {
  const ndStops = filters.filter(isNd).reduce((sum, { stops }) => sum + stops, 0);
  const others = filters.filter((filter) => !isNd(filter)).map(({ name }) => name);
  return ndStops > 0 ? [formatNd(ndStops), ...others] : others;
}

/** 'f/5.6 · ND 3 stops (0.9) · 1/2 + 0.1': the key's power, or the first light's. */
export function shortRecipeText(view: SetupView, working: WorkingSetup): string {
  const { recipe, filters } = working;
  const keyAt = Math.max(
    0,
    recipe.lights.findIndex(({ role }) => role === 'key'),
  );
  const light = recipe.lights[keyAt];
  const source = view.sources[keyAt];
  return [
    formatAperture(recipe.fNumber, view.question.camera.step ?? 'third'),
    ...filterTexts(filters),
    ...(light === undefined || source === undefined
      ? []
      : [powerText(light.powerStops, source.head).dial]),
  ].join(' · ');
}
