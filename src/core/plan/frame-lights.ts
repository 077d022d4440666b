import type { Chromaticity, Triple } from '../colour/chromaticity.ts';
import { whiteOfKelvin } from '../colour/daylight-locus.ts';
import { offSurface, shiftOfAll, throughFilter } from '../colour/filtered-light.ts';
import { renderedLight, type WhiteBalance } from '../colour/white-balance.ts';
import { ambientColour } from '../sky/ambient-colour.ts';
import type { SetupSource } from './setup-source.ts';
import type { SetupView } from './setup-view.ts';

/** Colour of a head's light at the subject: its own, its gels, the surface it is bounced off. */
export function colourOfSource({ head, light, gel, secondGel }: SetupSource): Chromaticity {
  const gels = [gel, secondGel].filter((one) => one !== null);
  const gelled = throughFilter(whiteOfKelvin(head.flashKelvin), shiftOfAll(gels));
  return light.bounce === null ? gelled : offSurface(gelled, light.bounce.colour);
}

/** Colour of the ambient on the face, as stated in the setup or by the model. */
export function colourOfAmbient({ setup, light, scene }: SetupView): Chromaticity {
  if (setup.ambientKelvin !== null) return whiteOfKelvin(setup.ambientKelvin);
  const { planeLux, beamPlaneLux } = light.subject;
  return ambientColour({
    condition: scene.condition,
    sunAltitudeDeg: light.sun.apparentAltitudeDeg,
    beamLux: setup.shaded ? 0 : beamPlaneLux,
    restLux: planeLux - beamPlaneLux,
  });
}

/** A light as linear RGB of a white surface that a stop value puts at mid-grey times its reflectance. */
export type RenderedLights = {
  readonly sources: readonly Triple[];
  readonly ambient: Triple;
};

/** Every light of a setup as the camera's white balance renders it, of unit luminance. */
export const renderedLights = (view: SetupView, setting: WhiteBalance): RenderedLights => ({
  sources: view.sources.map((source) => renderedLight(colourOfSource(source), setting)),
  ambient: renderedLight(colourOfAmbient(view), setting),
});

/** Colours at their stops, added as light, off a surface of that reflectance. */
export function litSurface(
  lights: readonly { readonly colour: Triple; readonly stops: number }[],
  reflectance: number,
): Triple {
  const sum = (channel: 0 | 1 | 2): number =>
    lights.reduce((total, { colour, stops }) => total + colour[channel] * 2 ** stops, 0);
  return [reflectance * sum(0), reflectance * sum(1), reflectance * sum(2)];
}
