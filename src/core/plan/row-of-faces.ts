import { cosDeg, sinDeg } from '../units/angle.ts';

export type Row = {
  readonly people: number;
  /** Between neighbouring faces. */
  readonly spacingM: number;
  readonly faceHeightM: number;
};

export type LightStand = {
  /** From the modifier's face to the middle of the row, as a tape measures it. */
  readonly distanceM: number;
  /** From the line subject to camera, positive to the camera's right. */
  readonly angleDeg: number;
  readonly heightM: number;
  /** Of the disc that the modifier's face is as large as; 0 for a point. */
  readonly sourceRadiusM: number;
};

/** Metres from the middle face: to the camera's right, towards the camera, above the faces. */
export type StandPosition = {
  readonly rightM: number;
  readonly towardsCameraM: number;
  readonly aboveM: number;
};

/** Where a light stands. One higher above the faces than it is far from them hangs straight above. */
export function standPosition(stand: LightStand, row: Row): StandPosition {
  const aboveM = Math.max(
    -stand.distanceM,
    Math.min(stand.distanceM, stand.heightM - row.faceHeightM),
  );
  const levelM = Math.sqrt(Math.max(0, stand.distanceM ** 2 - aboveM ** 2));
  return {
    rightM: levelM * sinDeg(stand.angleDeg),
    towardsCameraM: levelM * cosDeg(stand.angleDeg),
    aboveM,
  };
}

/** Faces of a row across the picture, left to right, metres from its middle. */
export const facePositionsM = ({ people, spacingM }: Row): readonly number[] =>
  Array.from({ length: people }, (_, place) => (place - (people - 1) / 2) * spacingM);

export type FaceSpread = {
  /** Stops of the best lit face against the middle of the row. */
  readonly nearestStops: number;
  /** Stops of the least lit face against the middle of the row. */
  readonly farthestStops: number;
  readonly spreadStops: number;
};

/** How one light falls off over the row, by the disc form of the inverse square law. */
export function faceSpread(stand: LightStand, row: Row): FaceSpread {
  const { rightM, towardsCameraM, aboveM } = standPosition(stand, row);
  const radiusSquared = stand.sourceRadiusM ** 2;
  const middle = stand.distanceM ** 2 + radiusSquared;
  const stops = facePositionsM(row).map((faceM) =>
    Math.log2(middle / ((rightM - faceM) ** 2 + towardsCameraM ** 2 + aboveM ** 2 + radiusSquared)),
  );
  const nearestStops = Math.max(...stops);
  const farthestStops = Math.min(...stops);
  return { nearestStops, farthestStops, spreadStops: nearestStops - farthestStops };
}
