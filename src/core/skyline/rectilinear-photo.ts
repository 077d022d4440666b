import { acosDeg, atan2Deg, atanDeg, cosDeg } from '../units/angle.ts';
import { angleBetweenDeg } from '../units/direction.ts';
import { fail, ok } from '../units/result.ts';
import {
  areTooClose,
  azimuthNear,
  directionTo,
  towards,
  type PhotoModel,
  type PixelPoint,
  type Vector,
} from './photo-sight.ts';

/** Wider straight-line pictures are not taken. */
const MOST_FIELD_DEG = 140;

/**
 * A picture of straight lines, its axis through the middle, without distortion. Two known
 * directions fix its four unknowns exactly: their angle the focal length, then bearing, tilt and
 * roll. Where two focal lengths fit the angle the longer one is taken. [ray2002]
 */
export const rectilinearPhoto: PhotoModel = ({ widthPx, heightPx, known }) => {
  const fromAxis = ({ xPx, yPx }: PixelPoint): readonly [number, number] => [
    xPx - widthPx / 2,
    heightPx / 2 - yPx,
  ];
  const [first, second] = known;
  const [x1, y1] = fromAxis(first);
  const [x2, y2] = fromAxis(second);
  const apartDeg = angleBetweenDeg(first, second);
  const apartShare = Math.hypot(x2 - x1, y2 - y1) / widthPx;
  if (areTooClose(apartShare, apartDeg)) return fail({ kind: 'too-close', apartShare, apartDeg });

  const focalPx = focalLengthPx([x1, y1], [x2, y2], apartDeg);
  const horizontalFieldDeg = 2 * atanDeg(widthPx / (2 * (focalPx ?? 0)));
  if (focalPx === null || horizontalFieldDeg > MOST_FIELD_DEG)
    return fail({ kind: 'no-such-picture', apartDeg });

  // Right, up and back, against the way it looks, turn as east, north and up do.
  const inPicture = triad([x1, y1, -focalPx], [x2, y2, -focalPx]);
  const inWorld = triad(towards(first), towards(second));
  const toWorld = (ray: Vector): Vector => {
    const [a, b, c] = inPicture.map((axis) => dot(axis, ray)) as [number, number, number];
    const [u, v, w] = inWorld;
    return [
      a * u[0] + b * v[0] + c * w[0],
      a * u[1] + b * v[1] + c * w[1],
      a * u[2] + b * v[2] + c * w[2],
    ];
  };

  const middle = directionTo(toWorld([0, 0, -1]));
  const directionAt = (pixel: PixelPoint): ReturnType<typeof directionTo> => {
    const { azimuthDeg, altitudeDeg } = directionTo(toWorld([...fromAxis(pixel), -focalPx]));
    return { azimuthDeg: azimuthNear(azimuthDeg, middle.azimuthDeg), altitudeDeg };
  };
  return ok({
    directionAt,
    middle,
    horizontalFieldDeg,
    rollDeg: atan2Deg(-toWorld([1, 0, 0])[2], toWorld([0, 1, 0])[2]),
    missDeg: Math.max(...known.map((mark) => angleBetweenDeg(directionAt(mark), mark))),
    stretchPerDegree: 1 / apartDeg,
  });
};

/** The focal length at which two places of a picture, from its middle, are an angle apart; null where none is. */
function focalLengthPx(
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  apartDeg: number,
): number | null {
  const cosine = cosDeg(apartDeg);
  const square = cosine * cosine;
  const between = x1 * x2 + y1 * y2;
  const firstOut = x1 * x1 + y1 * y1;
  const secondOut = x2 * x2 + y2 * y2;
  // (between + q)² = square·(firstOut + q)(secondOut + q) with q the focal length squared.
  const a = 1 - square;
  const b = 2 * between - square * (firstOut + secondOut);
  const c = between * between - square * firstOut * secondOut;
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return null;
  const fitting = [1, -1]
    .map((sign) => (-b + sign * Math.sqrt(discriminant)) / (2 * a))
    .filter((q) => q > 0 && Math.abs(angleAt(q) - apartDeg) < 0.01);
  return fitting.length === 0 ? null : Math.sqrt(Math.max(...fitting));

  function angleAt(q: number): number {
    return acosDeg((between + q) / Math.sqrt((firstOut + q) * (secondOut + q)));
  }
}

const dot = (one: Vector, other: Vector): number =>
  one[0] * other[0] + one[1] * other[1] + one[2] * other[2];

const cross = (one: Vector, other: Vector): Vector => [
  one[1] * other[2] - one[2] * other[1],
  one[2] * other[0] - one[0] * other[2],
  one[0] * other[1] - one[1] * other[0],
];

const unit = ([x, y, z]: Vector): Vector => {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
};

/** Three axes that two directions span, the first midway between them. */
function triad(first: Vector, second: Vector): readonly [Vector, Vector, Vector] {
  const [one, other] = [unit(first), unit(second)];
  const middle = unit([one[0] + other[0], one[1] + other[1], one[2] + other[2]]);
  const across = unit(cross(one, other));
  return [middle, across, cross(across, middle)];
}
