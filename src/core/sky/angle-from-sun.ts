import type { SunPosition } from '../sun-moon/sun-position.ts';
import { acosDeg } from '../units/angle.ts';
import { isInside, type PictureRectangle, borderPoints } from './picture-rectangle.ts';
import { type Projection, unitVector } from './framing.ts';

const BORDER = { columns: 12, rows: 8 } as const;

/** From the sun to the nearest point of a part of the picture, 0 inside it, to a few tenths of a degree. */
export const angleFromSun = (
  { toUnitVector, toPicture }: Projection,
  rectangle: PictureRectangle,
): ((sun: SunPosition) => number) => {
  const border = borderPoints(rectangle, BORDER).map(toUnitVector);
  return (sun) => {
    const direction = { azimuthDeg: sun.azimuthDeg, altitudeDeg: sun.apparentAltitudeDeg };
    const point = toPicture(direction);
    if (point !== null && isInside(rectangle, point)) return 0;
    const { east, north, up } = unitVector(direction);
    let greatestCosine = -1;
    for (const vector of border) {
      const cosine = vector.east * east + vector.north * north + vector.up * up;
      if (cosine > greatestCosine) greatestCosine = cosine;
    }
    return acosDeg(greatestCosine);
  };
};
