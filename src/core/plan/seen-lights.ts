import type { Chromaticity } from '../colour/chromaticity.ts';
import { correlatedTemperature } from '../colour/correlated-temperature.ts';
import { throughFilter } from '../colour/filtered-light.ts';
import { seenLight, type SeenLight } from '../colour/seen-light.ts';
import type { WhiteBalance } from '../colour/white-balance.ts';
import { projection } from '../sky/framing.ts';
import { skyColour } from '../sky/sky-colour.ts';
import { colourOfAmbient, colourOfSource } from './frame-lights.ts';
import type { Kit } from './kit.ts';
import { filtersNow, stackShift } from './lens-stack.ts';
import type { LightRole, Setup } from './setup-schema.ts';
import type { SetupView } from './setup-view.ts';

export type SeenLights = {
  readonly sources: readonly {
    readonly lightId: string;
    readonly role: LightRole;
    readonly seen: SeenLight;
  }[];
  readonly ambient: SeenLight;
  /** Colour temperature of the ambient itself, no filter before it. */
  readonly ambientKelvin: number;
  /** In the middle of the patch, or of the frame where there is none. */
  readonly sky: SeenLight;
};

export const whiteBalanceOf = (
  setup: Pick<Setup, 'whiteBalanceKelvin' | 'whiteBalanceTint'>,
): WhiteBalance => ({ kelvin: setup.whiteBalanceKelvin, tint: setup.whiteBalanceTint });

/** How flash on skin, ambient and sky look under the white balance, the filters on the lens in it. */
export function seenLights(view: SetupView, kit: Kit): SeenLights {
  const shift = stackShift(filtersNow(view, kit));
  const setting = whiteBalanceOf(view.setup);
  const seen = (light: Chromaticity): SeenLight => seenLight(throughFilter(light, shift), setting);
  const ambient = colourOfAmbient(view);
  return {
    sources: view.sources.map((source) => ({
      lightId: source.lightId,
      role: source.light.role,
      seen: seen(colourOfSource(source)),
    })),
    ambient: seen(ambient),
    ambientKelvin: correlatedTemperature(ambient).kelvin,
    sky: seen(skyInPatch(view)),
  };
}

const skyInPatch = ({ scene, light }: SetupView): Chromaticity =>
  skyColour(
    scene.condition,
    light.sun,
  )(projection(scene.framing).toDirection(light.patch ?? { xFraction: 0, yFraction: 0 }));
