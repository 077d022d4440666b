import type { Triple } from '../colour/chromaticity.ts';
import { filterStackFigures } from '../colour/filter-stack.ts';
import { filterGains } from '../colour/seen-light.ts';
import { renderedLight, type WhiteBalance } from '../colour/white-balance.ts';
import { ev100FromLuminance } from '../exposure/exposure-value.ts';
import { radFromDeg } from '../units/angle.ts';
import { facePlaces, type FacePlace } from './face-places.ts';
import type { LitFigure } from './figure-shapes.ts';
import { litSurface, renderedLights, type RenderedLights } from './frame-lights.ts';
import type { FrameScene } from './predicted-frame.ts';
import { projectedFraming } from './picture-geometry.ts';
import { lightAgainstMiddle, standPosition } from './row-of-faces.ts';
import type { SetupView, WorkingSetup } from './setup-view.ts';
import { sunAsLight } from './sun-as-light.ts';

/** Dark clothes and hair, common practice. [lightingPractice] */
const CLOTH_REFLECTANCE = 0.09;
const HAIR_REFLECTANCE = 0.2;

/** What a setup that works looks like at its settings, ready to be painted. */
export function frameScene(
  view: SetupView,
  working: WorkingSetup,
  size: { readonly widthPx: number; readonly heightPx: number },
): FrameScene {
  const { scene, light, setup, framing } = view;
  const { cameraEv, unlitStops } = working.recipe;
  const { skyFilters, faceFilterStops } = view.question;
  const whiteBalance: WhiteBalance = {
    kelvin: setup.whiteBalanceKelvin,
    tint: setup.whiteBalanceTint,
  };
  const lens = filterGains(filterStackFigures(working.filters), whiteBalance);
  // The recipe counts what a graduated filter takes at the faces as taken everywhere; here it comes by the row.
  const lights = throughLens(renderedLights(view, whiteBalance), lens, faceFilterStops);
  const polariserStops = light.filteredSky?.polariser?.frame.middleStops ?? 0;
  const groundCdM2 = (scene.groundReflectance * light.subject.groundLux) / radFromDeg(180);
  const sun = sunAsLight(light, setup, framing);
  return {
    ...size,
    framing: projectedFraming(framing),
    cameraHeightM: framing.cameraHeightM,
    condition: scene.condition,
    sun: light.sun,
    daylight: light.daylight,
    skyline: scene.skyline,
    cameraEv: cameraEv - faceFilterStops,
    whiteBalance,
    lensGains: scaled(lens, -polariserStops),
    graduation: skyFilters?.graduation ?? null,
    // Luminance at mid-grey is 18 % light.
    ground: litSurface(
      [{ colour: lights.ambient, stops: ev100FromLuminance(groundCdM2) - cameraEv }],
      0.18,
    ),
    figures: facePlaces(setup)
      .toSorted((one, other) => other.behindM - one.behindM)
      .map((place) =>
        litFigure(view, working, lights, place, {
          ambientStops: unlitStops,
          sun:
            sun.role === 'rim' || sun.role === 'side'
              ? {
                  stops: sun.edgeEv - cameraEv + Math.log2(Math.max(1e-6, sun.shareOfMinutes)),
                  colour: scaled(
                    passed(renderedLight(sun.colour, whiteBalance), lens),
                    faceFilterStops,
                  ),
                  right: sun.angleDeg > 0,
                }
              : null,
        }),
      ),
  };
}

const passed = (colour: Triple, gains: Triple): Triple => [
  colour[0] * gains[0],
  colour[1] * gains[1],
  colour[2] * gains[2],
];

const scaled = (colour: Triple, stops: number): Triple => {
  const times = 2 ** stops;
  return passed(colour, [times, times, times]);
};

/** Through the colour of the lens filters, and so many stops brighter. */
const throughLens = (lights: RenderedLights, lens: Triple, stops: number): RenderedLights => ({
  sources: lights.sources.map((colour) => scaled(passed(colour, lens), stops)),
  ambient: scaled(passed(lights.ambient, lens), stops),
});

type SunEdge = { readonly stops: number; readonly colour: Triple; readonly right: boolean };

function litFigure(
  { setup, framing, sources }: SetupView,
  { recipe }: WorkingSetup,
  lights: RenderedLights,
  place: FacePlace,
  ambient: { readonly ambientStops: number; readonly sun: SunEdge | null },
): LitFigure {
  const here = { rightM: place.rightM, towardsCameraM: -place.behindM, aboveM: 0 };
  const stopsOf = (at: number): number => {
    const source = sources[at];
    const lit = recipe.lights[at];
    if (source === undefined || lit === undefined) return -Infinity;
    return lit.levelStops + Math.log2(lightAgainstMiddle(source.stand, setup)(here));
  };
  const of = (...roles: readonly string[]): { colour: Triple; stops: number }[] =>
    sources.flatMap(({ light }, at) =>
      roles.includes(light.role)
        ? [{ colour: lights.sources[at] ?? lights.ambient, stops: stopsOf(at) }]
        : [],
    );
  const ambientLight = { colour: lights.ambient, stops: ambient.ambientStops };
  const dark = [ambientLight, ...of('fill')];
  const lit = [...dark, ...of('key')];
  const key = sources.find(({ light }) => light.role === 'key');
  const litCloth = litSurface(lit, CLOTH_REFLECTANCE);
  const edge = (right: boolean): Triple | null => {
    const strikes = sources.flatMap(({ light, stand }, at) =>
      (light.role === 'rim' || light.role === 'cross') &&
      standPosition(stand, setup).rightM > 0 === right
        ? [{ colour: lights.sources[at] ?? lights.ambient, stops: stopsOf(at) }]
        : [],
    );
    const bySun = ambient.sun !== null && ambient.sun.right === right ? [ambient.sun] : [];
    const all = [...strikes, ...bySun];
    const struck = litSurface([...all, ambientLight], HAIR_REFLECTANCE);
    // An edge no brighter than what it borders is no edge.
    return struck[1] > litCloth[1] ? struck : null;
  };
  // Two people of a group have the two ends of the skins, the others lie between.
  const skin = skinOf(place, setup);
  return {
    rightM: place.rightM,
    awayM: framing.cameraDistanceM + place.behindM,
    faceHeightM: setup.faceHeightM,
    pose: setup.pose,
    litRight: (key?.light.angleDeg ?? 0) >= 0,
    litSkin: litSurface(lit, skin),
    darkSkin: litSurface(dark, skin),
    litCloth,
    darkCloth: litSurface(dark, CLOTH_REFLECTANCE),
    leftEdge: edge(false),
    rightEdge: edge(true),
  };
}

/** Reflectance of a person's skin: alone the middle of the range, in a row from its one end to the other. */
const skinOf = (
  { inRow, rowPeople }: FacePlace,
  { darkestSkin, lightestSkin }: { readonly darkestSkin: number; readonly lightestSkin: number },
): number => {
  const share = rowPeople === 1 ? 0.5 : inRow / (rowPeople - 1);
  return darkestSkin * (lightestSkin / darkestSkin) ** share;
};
