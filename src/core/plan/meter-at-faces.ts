import type { Recipe } from '../strobe/recipe.ts';
import { facePlaces, type FacePlace } from './face-places.ts';
import type { SetupCase } from './setup-case.ts';

export type FaceMeter = FacePlace & {
  /** Of everything on and the ambient, against the middle face. */
  readonly stops: number;
};

/** What a meter shows at the best and at the least lit face, everything on; light adds. */
export function meterAtFaces(
  { sources, setup }: Pick<SetupCase, 'sources' | 'setup'>,
  recipe: Pick<Recipe, 'lights' | 'unlitStops'>,
): { readonly best: FaceMeter; readonly least: FaceMeter } | null {
  const ambient = 2 ** recipe.unlitStops;
  const onFace = sources.flatMap(({ light, faces }, place) => {
    const lit = recipe.lights[place];
    const isOnFace = light.role === 'key' || light.role === 'fill';
    return lit === undefined || !isOnFace ? [] : [{ level: 2 ** lit.levelStops, faces }];
  });
  const middle = onFace.reduce((sum, { level }) => sum + level, ambient);
  const meters = facePlaces(setup).map((place, at): FaceMeter => {
    const there = onFace.reduce(
      (sum, { level, faces }) => sum + level * 2 ** (faces.faces[at]?.stops ?? 0),
      ambient,
    );
    return { ...place, stops: Math.log2(there / middle) };
  });
  const [first] = meters;
  if (first === undefined || middle === 0) return null;
  return {
    best: meters.reduce((best, meter) => (meter.stops > best.stops ? meter : best), first),
    least: meters.reduce((least, meter) => (meter.stops < least.stops ? meter : least), first),
  };
}
