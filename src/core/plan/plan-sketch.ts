import { horizontalFieldDeg } from '../sky/framing.ts';
import { atan2Deg, tanDeg } from '../units/angle.ts';
import { facePlaces, type Row } from './face-places.ts';
import { projectedFraming } from './picture-geometry.ts';
import { lightAgainstMiddle, standPosition } from './row-of-faces.ts';
import type { LightRole } from './setup-schema.ts';
import type { SetupView } from './setup-view.ts';

/** Metres from the middle of the front row: to the camera's right, and towards the camera. */
export type SketchPoint = { readonly rightM: number; readonly towardsCameraM: number };

export type SketchFace = SketchPoint & {
  /** Of the key and what adds to it, against the middle face. */
  readonly stops: number;
};

export type SketchLight = SketchPoint & {
  readonly lightId: string;
  readonly role: LightRole;
  /** Across its axis. */
  readonly widthM: number;
  readonly distanceM: number;
  readonly angleDeg: number;
  /** Whether it comes off a surface there. */
  readonly isBounced: boolean;
  readonly isInFrame: boolean;
};

export type PlanSketch = {
  readonly faces: readonly SketchFace[];
  readonly lights: readonly SketchLight[];
  readonly cameraDistanceM: number;
  /** Half width of what the camera sees at the front row. */
  readonly halfFieldM: number;
  /** What has to be shown: to both sides of the middle, behind the front row and towards the camera. */
  readonly extent: { readonly sideM: number; readonly backM: number; readonly frontM: number };
};

/** Left free round what stands outermost. */
const ROOM_M = 1.2;

/** A setup seen from above, to scale. */
export function planSketch(view: SetupView): PlanSketch {
  const { setup, framing, sources, lightsInFrame } = view;
  const keys = sources.filter(({ light }) => light.role === 'key');
  const strength = (place: SketchPoint): number =>
    keys.reduce(
      (sum, { stand }, at) =>
        sum +
        2 ** (view.answer.ok ? keyLevel(view, at) : 0) *
          lightAgainstMiddle(stand, setup)({ ...place, aboveM: 0 }),
      0,
    );
  const middle = strength({ rightM: 0, towardsCameraM: 0 });
  const faces = facePlaces(setup).map(({ rightM, behindM }): SketchFace => {
    const place = { rightM, towardsCameraM: -behindM };
    return { ...place, stops: keys.length === 0 ? 0 : Math.log2(strength(place) / middle) };
  });
  const lights = sources.map(({ lightId, light, modifier, stand, bounce }): SketchLight => {
    const { rightM, towardsCameraM } = standPosition(stand, setup);
    return {
      lightId,
      role: light.role,
      rightM,
      towardsCameraM,
      widthM: bounce === null ? modifier.widthM : 2 * stand.sourceRadiusM,
      distanceM: light.distanceM,
      angleDeg: light.angleDeg,
      isBounced: bounce !== null,
      isInFrame: lightsInFrame.includes(lightId),
    };
  });
  const shown = [...faces, ...lights];
  return {
    faces,
    lights,
    cameraDistanceM: framing.cameraDistanceM,
    halfFieldM: framing.cameraDistanceM * tanDeg(horizontalFieldDeg(projectedFraming(framing)) / 2),
    extent: {
      sideM: ROOM_M + Math.max(...shown.map(({ rightM }) => Math.abs(rightM))),
      backM: ROOM_M + Math.max(0, ...shown.map(({ towardsCameraM }) => -towardsCameraM)),
      frontM:
        ROOM_M / 2 +
        Math.max(framing.cameraDistanceM, ...shown.map(({ towardsCameraM }) => towardsCameraM)),
    },
  };
}

const keyLevel = (view: SetupView, at: number): number => {
  if (!view.answer.ok) return 0;
  const { recipe } = view.answer.value;
  const levels = recipe.lights.filter(({ role }) => role === 'key');
  return levels[at]?.levelStops ?? 0;
};

/** Bounds of what a setup can hold of a light's place. */
export const NEAREST_M = 0.2;
export const FARTHEST_M = 30;

/** Distance by tape and angle of a light whose middle stands above a point of the sketch. */
export function standAt(
  { rightM, towardsCameraM }: SketchPoint,
  heightM: number,
  { faceHeightM }: Pick<Row, 'faceHeightM'>,
): { readonly distanceM: number; readonly angleDeg: number } {
  const distanceM = Math.hypot(rightM, towardsCameraM, heightM - faceHeightM);
  return {
    distanceM: Math.min(FARTHEST_M, Math.max(NEAREST_M, Math.round(distanceM * 20) / 20)),
    angleDeg: Math.round(atan2Deg(rightM, towardsCameraM)),
  };
}
