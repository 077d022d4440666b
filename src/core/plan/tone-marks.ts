import { ev100FromLuminance } from '../exposure/exposure-value.ts';
import { radFromDeg } from '../units/angle.ts';
import type { SetupView } from './setup-view.ts';
import { sunAsLight } from './sun-as-light.ts';

/** A thing on the tone scale, stops from a grey card under the key. */
export type ToneMark = {
  readonly name:
    | 'card'
    | 'patch'
    | 'sky-darkest'
    | 'sky-mean'
    | 'sky-brightest'
    | 'fill-side'
    | 'rim'
    | 'cross'
    | 'background'
    | 'unlit-face'
    | 'unlit-face-sun-out'
    | 'nearest-face'
    | 'farthest-face'
    | 'sun'
    | 'sun-edge'
    | 'ground'
    | 'lightest-skin'
    | 'darkest-skin'
    | 'white-shirt';
  readonly of: 'flash' | 'sky' | 'ambient';
  readonly stops: number;
  readonly lightId: string | null;
};

/** White in a plain encoding clips where linear 1 is: log2(1 / 0.18). */
export const CLIPPING_STOPS = Math.log2(1 / 0.18);

/** The reflectance a recipe's mid-grey stands for. [iso2720] */
const GREY_CARD = 0.18;
/** A white shirt's, common practice. [lightingPractice] */
const WHITE_SHIRT = 0.85;

const overCard = (reflectance: number): number => Math.log2(reflectance / GREY_CARD);

/** What a recipe puts where; empty while there is none. */
export function toneMarks(view: SetupView): readonly ToneMark[] {
  if (!view.answer.ok || view.light.skyInFrame === null) return [];
  const { recipe } = view.answer.value;
  const sky = view.light.filteredSky?.reading ?? view.light.skyInFrame;
  const at = (ev: number): number => ev - recipe.cameraEv;
  // Sky and ground lose to a graduated filter what they lose, not what the faces do.
  const atBesideFaces = (ev: number): number => at(ev) + view.question.faceFilterStops;
  const marks: ToneMark[] = [
    mark('card', 'flash', recipe.keyStops),
    mark('sky-darkest', 'sky', atBesideFaces(sky.darkEv)),
    mark('sky-mean', 'sky', atBesideFaces(sky.meanEv)),
    mark('sky-brightest', 'sky', atBesideFaces(sky.brightEv)),
    mark('unlit-face', 'ambient', recipe.unlitStops),
  ];
  if (!sky.patchIsFrame) marks.push(mark('patch', 'sky', recipe.patchStops));
  if (sky.sunInFrame) marks.push(mark('sun', 'sky', Infinity));
  const { setup, scene, framing } = view;
  const groundCdM2 = (scene.groundReflectance * view.light.subject.groundLux) / radFromDeg(180);
  marks.push(
    mark('lightest-skin', 'flash', recipe.keyStops + overCard(setup.lightestSkin)),
    mark('darkest-skin', 'flash', recipe.keyStops + overCard(setup.darkestSkin)),
    mark('white-shirt', 'flash', recipe.keyStops + overCard(WHITE_SHIRT)),
    mark('ground', 'ambient', atBesideFaces(ev100FromLuminance(groundCdM2))),
  );
  const sun = sunAsLight(view.light, setup, framing);
  if (sun.role === 'rim' || sun.role === 'side')
    marks.push(mark('sun-edge', 'ambient', at(sun.edgeEv)));
  if (recipe.unlitOutStops - recipe.unlitStops > 0.05)
    marks.push(mark('unlit-face-sun-out', 'ambient', recipe.unlitOutStops));
  if (recipe.fillStops !== null) marks.push(mark('fill-side', 'flash', recipe.fillStops));
  view.sources.forEach(({ lightId, light, faces }, place) => {
    const lit = recipe.lights[place];
    if (lit === undefined) return;
    if (light.role === 'rim' || light.role === 'background' || light.role === 'cross')
      marks.push(mark(light.role, 'flash', lit.levelStops, lightId));
    if (light.role === 'key' && setup.people > 1) {
      marks.push(mark('nearest-face', 'flash', recipe.keyStops + faces.nearestStops, lightId));
      marks.push(mark('farthest-face', 'flash', recipe.keyStops + faces.farthestStops, lightId));
    }
  });
  return marks.toSorted((first, second) => second.stops - first.stops);
}

const mark = (
  name: ToneMark['name'],
  of: ToneMark['of'],
  stops: number,
  lightId: string | null = null,
): ToneMark => ({ name, of, stops, lightId });
