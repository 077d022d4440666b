import type { SkyCondition } from '../daylight/sky-condition.ts';
import type { GeoPoint } from '../place/geo-point.ts';
import { projection, type Framing, type PicturePoint } from '../sky/framing.ts';
import type { SkyFilters } from '../sky/filtered-frame.ts';
import { placePatch, type Patch } from '../sky/patch.ts';
import { skylineAltitude, type Skyline } from '../skyline/skyline.ts';
import { spotLightByPatch, type SpotInstant, type SpotLight } from '../spot/spot-light.ts';
import { sunPosition } from '../sun-moon/sun-position.ts';
import { atan2Deg, sinDeg } from '../units/angle.ts';
import { facePlaces, type FacePlace, type Row } from './face-places.ts';
import { inOrder } from './order-key.ts';
import { framingOf, projectedFraming } from './picture-geometry.ts';
import type { Setup } from './setup-schema.ts';
import type { Shoot, Spot } from './shoot.ts';
import type { ShootFraming } from './spot-schema.ts';

/** What the light of a setup depends on, plain data. */
export type SetupScene = {
  readonly place: GeoPoint;
  readonly zone: string;
  readonly framing: Framing;
  /** Null: the default beside the last head on the side away from the sun. */
  readonly patch: Patch | null;
  /** Where the outermost faces stand in the picture. */
  readonly heads: { readonly left: PicturePoint; readonly right: PicturePoint };
  readonly skyline: Skyline;
  readonly groundReflectance: number;
  readonly condition: SkyCondition;
  /** Filters on the lens that part the sky; absent or null: none. */
  readonly skyFilters?: SkyFilters | null | undefined;
};

export type SetupLight = SpotLight & {
  /** The patch that was read; null: none in this frame is half sky, the whole sky stands in. */
  readonly patch: Patch | null;
};

/** The scene of a spot with a framing; the patch may be the default. */
export function sceneOf(
  spot: Spot,
  framing: ShootFraming,
  taken: {
    readonly patch: Setup['patch'];
    readonly condition: SkyCondition;
  } & Row,
): SetupScene {
  return {
    place: {
      latitudeDeg: spot.latitudeDeg,
      longitudeDeg: spot.longitudeDeg,
      elevationM: spot.elevationM,
    },
    zone: spot.zone,
    framing: projectedFraming(framing),
    patch: taken.patch,
    heads: headsInPicture(framing, taken),
    skyline: skylineOf(spot),
    groundReflectance: spot.groundReflectance,
    condition: taken.condition,
  };
}

/** Where the faces farthest left and right stand in the picture. */
export function headsInPicture(framing: ShootFraming, row: Row): SetupScene['heads'] {
  const projected = projectedFraming(framing);
  const faces = facePlaces(row)
    .map((place) => faceInPicture(framing, projected, row.faceHeightM, place))
    .toSorted((first, second) => first.xFraction - second.xFraction);
  return { left: faces[0] ?? CENTRE, right: faces.at(-1) ?? CENTRE };
}

export const setupScene = (shoot: Shoot, setup: Setup, spot: Spot): SetupScene =>
  sceneOf(spot, framingOf(setup, spot), { ...setup, condition: shoot.condition });

/** What hides the low sky: trace, terrain and obstacles where they were worked out, else the trace. */
export const skylineOf = (spot: Spot): Skyline => spot.skylineNow ?? traceOf(spot);

export const traceOf = (spot: Spot): Skyline =>
  Object.values(spot.skyline).map(({ azimuthDeg, altitudeDeg }) => ({ azimuthDeg, altitudeDeg }));

const CENTRE: PicturePoint = { xFraction: 0, yFraction: 0 };

/** Where a face stands in the picture; the centre when it is not before the camera. */
function faceInPicture(
  framing: ShootFraming,
  projected: Framing,
  faceHeightM: number,
  { rightM, behindM }: FacePlace,
): PicturePoint {
  const awayM = framing.cameraDistanceM + behindM;
  const levelM = Math.hypot(rightM, awayM);
  const point = projection(projected).toPicture({
    azimuthDeg: framing.bearingDeg + atan2Deg(rightM, awayM),
    altitudeDeg: atan2Deg(faceHeightM - framing.cameraHeightM, levelM),
  });
  return point ?? CENTRE;
}

/** The light of a setup as a function of time. The default patch has one place for each side of the sun. */
export function setupLight(scene: SetupScene): (instant: SpotInstant) => SetupLight {
  const lightWith = spotLightByPatch(scene);
  const reading = (patch: Patch | null): ((instant: SpotInstant) => SetupLight) => {
    const light = lightWith(patch);
    return (instant) => ({ ...light(instant), patch });
  };
  if (scene.patch !== null) return reading(scene.patch);

  const altitude = skylineAltitude(scene.skyline);
  const readers = new Map<boolean, (instant: SpotInstant) => SetupLight>();
  return (instant) => {
    const sun = sunPosition(instant.instantMs, scene.place);
    const sunIsLeft = sinDeg(sun.azimuthDeg - scene.framing.bearingDeg) < 0;
    let read = readers.get(sunIsLeft);
    if (read === undefined) {
      read = reading(
        placePatch({
          framing: scene.framing,
          skylineAltitude: altitude,
          head: sunIsLeft ? scene.heads.right : scene.heads.left,
          sun,
        }),
      );
      readers.set(sunIsLeft, read);
    }
    return read(instant);
  };
}

/** The setups of a spot in their order. */
export const setupsAt = (
  shoot: Shoot,
  spotId: string,
): readonly (readonly [id: string, setup: Setup])[] =>
  inOrder(shoot.setups).filter(([, setup]) => setup.spotId === spotId);
