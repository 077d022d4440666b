import type { SetupView } from './setup-view.ts';

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
    | 'background'
    | 'unlit-face'
    | 'unlit-face-sun-out'
    | 'nearest-face'
    | 'farthest-face'
    | 'sun';
  readonly of: 'flash' | 'sky' | 'ambient';
  readonly stops: number;
  readonly lightId: string | null;
};

/** White in a plain encoding clips where linear 1 is: log2(1 / 0.18). */
export const CLIPPING_STOPS = Math.log2(1 / 0.18);

/** What a recipe puts where; empty while there is none. */
export function toneMarks(view: SetupView): readonly ToneMark[] {
  if (!view.answer.ok || view.light.skyInFrame === null) return [];
  const { recipe } = view.answer.value;
  const sky = view.light.skyInFrame;
  const at = (ev: number): number => ev - recipe.cameraEv;
  const marks: ToneMark[] = [
    mark('card', 'flash', recipe.keyStops),
    mark('sky-darkest', 'sky', at(sky.darkEv)),
    mark('sky-mean', 'sky', at(sky.meanEv)),
    mark('sky-brightest', 'sky', at(sky.brightEv)),
    mark('unlit-face', 'ambient', recipe.unlitStops),
  ];
  if (!sky.patchIsFrame) marks.push(mark('patch', 'sky', recipe.patchStops));
  if (sky.sunInFrame) marks.push(mark('sun', 'sky', Infinity));
  if (recipe.unlitOutStops - recipe.unlitStops > 0.05)
    marks.push(mark('unlit-face-sun-out', 'ambient', recipe.unlitOutStops));
  if (recipe.fillStops !== null) marks.push(mark('fill-side', 'flash', recipe.fillStops));
  view.sources.forEach(({ lightId, light, faces }, place) => {
    const lit = recipe.lights[place];
    if (lit === undefined) return;
    if (light.role === 'rim' || light.role === 'background')
      marks.push(mark(light.role, 'flash', lit.levelStops, lightId));
    if (light.role === 'key' && view.setup.people > 1) {
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
