import { formatIso } from '../../../core/exposure/iso-scale.ts';
import type { Camera } from '../../../core/plan/kit.ts';
import type { SetupSource } from '../../../core/plan/setup-source.ts';
import type { Recipe } from '../../../core/strobe/recipe.ts';
import { metres, tenths } from '../../ui/figure-text.ts';
import { shutterText } from '../../ui/recipe-text.ts';

/** '2.0 under', '0.3 over', 'no light at all' */
export function underText(stopsFromCard: number): string {
  if (stopsFromCard === -Infinity) return 'no light at all';
  return stopsFromCard > 0.05
    ? `${tenths(stopsFromCard)} over`
    : `${tenths(Math.abs(stopsFromCard))} under`;
}

/** 'Hard reflector, 18 cm with grid, 2.9 m away, 30° to the camera’s right, 2.3 m high' */
export function standText({ light, modifier, setting, gel, secondGel }: SetupSource): string {
  const parts = (['diffuser', 'baffle', 'grid'] as const).filter(
    (part) => light[part] && modifier[`${part}Stops`] !== null,
  );
  const without = (['diffuser', 'baffle', 'grid'] as const).filter(
    (part) => !light[part] && modifier[`${part}Stops`] !== null,
  );
  const made = [
    modifier.name,
    setting === null ? '' : ` set to ${setting.name}`,
    parts.length === 0 ? '' : ` with ${parts.join(' and ')}`,
    without.length === 0 ? '' : `, no ${without.join(', no ')}`,
    gel === null ? '' : `, ${gel.name}`,
    secondGel === null ? '' : ` and ${secondGel.name}`,
  ].join('');
  const { bounce } = light;
  return [
    made,
    bounce === null
      ? `${metres(light.distanceM)} from the middle face`
      : `${metres(bounce.headToSurfaceM)} from the ${bounce.panelSideM === null ? 'surface' : 'panel'}, its lit patch ${metres(light.distanceM)} from the middle face`,
    angleText(light.angleDeg),
    `${metres(light.heightM)} high`,
    ...(bounce === null && light.featherDeg > 0
      ? [`turned ${Math.round(light.featherDeg)}° off the middle face towards the far end`]
      : []),
  ].join(', ');
}

function angleText(angleDeg: number): string {
  const size = Math.round(Math.abs(angleDeg));
  if (size === 0) return 'on the axis';
  return `${size}° to the camera’s ${angleDeg > 0 ? 'right' : 'left'}${size > 90 ? ', from behind' : ''}`;
}

/** 'meter at ISO 100, 1/250' */
export const meterSetText = (
  recipe: Pick<Recipe, 'iso' | 'shutterS'>,
  camera: Pick<Camera, 'step'> | undefined,
): string => `meter set to ${formatIso(recipe.iso)}, ${shutterText(recipe.shutterS, camera)}`;
