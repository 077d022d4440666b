import { formatIso } from '../../../core/exposure/iso-scale.ts';
import { formatNd } from '../../../core/exposure/lens-filter.ts';
import type { Camera } from '../../../core/plan/kit.ts';
import type { SetupCase } from '../../../core/plan/setup-case.ts';
import type { Recipe } from '../../../core/strobe/recipe.ts';
import { powerText } from '../../ui/power-text.ts';
import { apertureText, ROLE_NAMES, shutterText } from '../../ui/recipe-text.ts';

/** '1/200, fill 1/4 + 0.3': only what stands otherwise. */
export function changeWords(
  from: Recipe,
  to: Recipe,
  { sources }: Pick<SetupCase, 'sources'>,
  camera: Pick<Camera, 'step'> | undefined,
): string {
  const words: string[] = [];
  if (turned(from.shutterS, to.shutterS)) words.push(shutterText(to.shutterS, camera));
  if (turned(from.fNumber, to.fNumber)) words.push(apertureText(to.fNumber, camera));
  if (turned(from.iso, to.iso)) words.push(formatIso(to.iso));
  if (from.ndStops !== to.ndStops)
    words.push(to.ndStops === 0 ? 'ND off' : `${formatNd(to.ndStops)} on in all`);
  sources.forEach(({ light, head }, place) => {
    const before = from.lights[place]?.powerStops ?? 0;
    const after = to.lights[place]?.powerStops ?? 0;
    if (Math.abs(after - before) < 0.05) return;
    words.push(`${ROLE_NAMES[light.role].toLowerCase()} ${powerText(after, head).dial}`);
  });
  return words.join(', ');
}

/** A nominal and an exact value of one click are the same. */
const turned = (one: number, other: number): boolean =>
  Math.max(one, other) / Math.min(one, other) > 1.02;
