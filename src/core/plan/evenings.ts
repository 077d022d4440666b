import { facePlaces } from './face-places.ts';
import { lightInFrame } from './light-in-frame.ts';
import { headsFree } from './recipe-fix-changes.ts';
import { spreadOfLights, spreadStops, standPosition, type LightStand } from './row-of-faces.ts';
import type { SetupCase } from './setup-case.ts';
import type { SetupChange } from './setup-fix.ts';
import type { SetupSource } from './setup-source.ts';
import { mostSpreadStops } from './side-spread.ts';

/** What would even one kind of way, the lightest first; each is one change or two together. */
export type Evening = readonly (readonly SetupChange[])[];

/** Ways to even the faces under a light that is alone on its side, each by the least that should be enough. */
export const evenings = (base: SetupCase, source: SetupSource): readonly Evening[] => [
  [fartherBack(base, source)].filter((changes) => changes !== null),
  [higher(base, source)].filter((changes) => changes !== null),
  [turnedOff(base, source), turnedAndBack(base, source)].filter((changes) => changes !== null),
  [mirrored(base, source), mirroredAndBack(base, source)].filter((changes) => changes !== null),
];

type Way = (base: SetupCase, source: SetupSource) => readonly SetupChange[] | null;

const BACK_STEP_M = 0.05;
const FARTHEST_M = 30;

/** The least distance, from where it stands on, at which a stand made from it is even enough. */
const evenFromM = (
  base: SetupCase,
  stand: LightStand,
  spreadOf: (stand: LightStand) => number,
): number | null =>
  firstEven(
    base,
    stand,
    { step: BACK_STEP_M, upTo: FARTHEST_M - stand.distanceM },
    (byM) => ({ distanceM: hundredth(stand.distanceM + byM) }),
    spreadOf,
  )?.distanceM ?? null;

const back = (lightIds: readonly string[], distanceM: number): SetupChange => ({
  kind: 'distance',
  lightIds,
  distanceM,
  closer: false,
});

const fartherBack: Way = (base, { light, lightId, stand }) => {
  if (light.distancePinned) return null;
  const distanceM = evenFromM(base, stand, alone(base));
  return distanceM === null ? null : [back([lightId], distanceM)];
};

const UP_STEP_M = 0.1;
/** As high as somebody holds a head up on a pole, common practice. [lightingPractice] */
const HAND_HELD_HEIGHT_M = 3;

/** Raised where it stands: the tape grows as the head goes up. */
const higher: Way = (base, { light, lightId, stand, carrier }) => {
  if (light.distancePinned || light.bounce !== null) return null;
  const highestM = carrier?.maxHeightM ?? HAND_HELD_HEIGHT_M;
  const { rightM, towardsCameraM } = standPosition(stand, base.setup);
  const found = firstEven(
    base,
    stand,
    { step: UP_STEP_M, upTo: highestM - stand.heightM },
    (byM) => {
      const heightM = hundredth(stand.heightM + byM);
      const upM = heightM - base.setup.faceHeightM;
      return { heightM, distanceM: hundredth(Math.hypot(rightM, towardsCameraM, upM)) };
    },
    alone(base),
  );
  if (found === null) return null;
  return [{ kind: 'height', lightId, heightM: found.heightM, distanceM: found.distanceM }];
};

const MOST_FEATHER_DEG = 60;

const feather = (lightId: string, featherDeg: number): SetupChange => ({
  kind: 'feather',
  lightId,
  featherDeg,
  more: true,
});

const turnedOff: Way = (base, { light, lightId, stand }) => {
  const { aim } = stand;
  if (light.bounce !== null || aim === undefined) return null;
  const found = firstEven(
    base,
    stand,
    { step: 1, upTo: MOST_FEATHER_DEG - aim.offAxisDeg },
    (byDeg) => ({ aim: { ...aim, offAxisDeg: Math.round(aim.offAxisDeg + byDeg) } }),
    alone(base),
  );
  return found?.aim === undefined ? null : [feather(lightId, found.aim.offAxisDeg)];
};

const FEATHER_STEP_DEG = 5;

/** Turned by whole fives, the one that lets it stay nearest. */
const turnedAndBack: Way = (base, { light, lightId, stand }) => {
  const { aim } = stand;
  if (light.bounce !== null || light.distancePinned || aim === undefined) return null;
  let nearest: { readonly featherDeg: number; readonly distanceM: number } | null = null;
  for (
    let featherDeg = FEATHER_STEP_DEG;
    featherDeg <= MOST_FEATHER_DEG;
    featherDeg += FEATHER_STEP_DEG
  ) {
    if (featherDeg <= aim.offAxisDeg) continue;
    const turned = { ...stand, aim: { ...aim, offAxisDeg: featherDeg } };
    const distanceM = evenFromM(base, turned, alone(base));
    if (distanceM !== null && (nearest === null || distanceM < nearest.distanceM))
      nearest = { featherDeg, distanceM };
  }
  return nearest && [feather(lightId, nearest.featherDeg), back([lightId], nearest.distanceM)];
};

/** Nearer to the camera's axis than this the other side is the same place. */
const APART_DEG = 10;

const mirrored: Way = (base, { light, lightId, head }) => {
  const newLightId = mirroredId(lightId);
  const offAxisDeg = Math.min(Math.abs(light.angleDeg), 180 - Math.abs(light.angleDeg));
  if (offAxisDeg < APART_DEG || base.setup.lights[newLightId] !== undefined) return null;
  const owned = headsFree(base, light.headId, head.owned) >= light.headCount;
  return [{ kind: 'mirror', lightId, newLightId, owned }];
};

const mirroredAndBack: Way = (base, source) => {
  const { light, lightId, stand } = source;
  const mirror = mirrored(base, source);
  if (mirror === null || light.distancePinned) return null;
  const distanceM = evenFromM(base, stand, (one) => {
    const other = { ...one, angleDeg: -one.angleDeg };
    const both = [one, other].map((each) => ({ stand: each, share: 1 }));
    return spreadOfLights(both, base.setup).spreadStops;
  });
  return distanceM === null ? null : [...mirror, back([lightId, mirroredId(lightId)], distanceM)];
};

const mirroredId = (lightId: string): string => `${lightId}-mirrored`;

const alone = ({ setup }: SetupCase): ((stand: LightStand) => number) => {
  const places = facePlaces(setup);
  return (stand) => spreadStops(stand, setup, places);
};

/** The first of ever larger steps at which the faces are even enough, the light not in the picture unless it is there now. */
function firstEven(
  { setup, framing }: SetupCase,
  stand: LightStand,
  steps: { readonly step: number; readonly upTo: number },
  moved: (by: number) => Partial<LightStand>,
  spreadOf: (stand: LightStand) => number,
): LightStand | null {
  const mayBeInFrame = lightInFrame(stand, setup, framing);
  for (let at = 1; at * steps.step <= steps.upTo + 1e-9; at += 1) {
    const there = { ...stand, ...moved(at * steps.step) };
    if (spreadOf(there) > mostSpreadStops(setup)) continue;
    if (mayBeInFrame || !lightInFrame(there, setup, framing)) return there;
  }
  return null;
}

const hundredth = (lengthM: number): number => Math.round(lengthM * 100) / 100;
