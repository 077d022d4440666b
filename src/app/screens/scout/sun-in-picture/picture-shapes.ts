import {
  directionOf,
  projection,
  type Framing,
  type PicturePoint,
  type UnitVector,
} from '../../../../core/sky/framing.ts';
import { skylineAltitude, type Skyline } from '../../../../core/skyline/skyline.ts';
import { cosDeg, sinDeg } from '../../../../core/units/angle.ts';

const EDGE_STEP_DEG = 0.25;
/** Farther from the axis a straight edge runs out of any picture. */
const EDGE_TO_DEG = 80;

/** The edge between ground and sky from left to right, nowhere under the level; also outside the picture. */
export function edgeInPicture(framing: Framing, skyline: Skyline): readonly PicturePoint[] {
  const altitudeOf = skylineAltitude(skyline);
  const { toPicture } = projection(framing);
  const steps = (2 * EDGE_TO_DEG) / EDGE_STEP_DEG;
  return Array.from({ length: steps + 1 }, (_, step) => {
    const azimuthDeg = framing.bearingDeg - EDGE_TO_DEG + step * EDGE_STEP_DEG;
    return toPicture({ azimuthDeg, altitudeDeg: Math.max(0, altitudeOf(azimuthDeg)) });
  }).filter((point) => point !== null);
}

const CIRCLE_POINTS = 48;

/** What lies a given angle from a point of the picture: a circle on the sky, stretched towards the corners. */
export function circleInPicture(
  framing: Framing,
  { centre, radiusDeg }: { readonly centre: PicturePoint; readonly radiusDeg: number },
): readonly PicturePoint[] {
  const { toPicture, toUnitVector } = projection(framing);
  const axis = toUnitVector(centre);
  const { across, along } = crossAxes(axis);
  return Array.from({ length: CIRCLE_POINTS }, (_, at) => {
    const turnDeg = (360 * at) / CIRCLE_POINTS;
    const side = (part: keyof UnitVector): number =>
      cosDeg(radiusDeg) * axis[part] +
      sinDeg(radiusDeg) * (cosDeg(turnDeg) * across[part] + sinDeg(turnDeg) * along[part]);
    return toPicture(directionOf({ east: side('east'), north: side('north'), up: side('up') }));
  }).filter((point) => point !== null);
}

/** Two directions at right angles to a third and to each other. */
function crossAxes({ east, north, up }: UnitVector): {
  readonly across: UnitVector;
  readonly along: UnitVector;
} {
  const level = Math.hypot(east, north);
  if (level < 1e-9)
    return { across: { east: 1, north: 0, up: 0 }, along: { east: 0, north: 1, up: 0 } };
  const across = { east: north / level, north: -east / level, up: 0 };
  return {
    across,
    along: {
      east: -across.north * up,
      north: across.east * up,
      up: across.north * east - across.east * north,
    },
  };
}
