import { offAxisStops, type BeamShape } from '../strobe/beam.ts';
import { acosDeg, cosDeg, sinDeg } from '../units/angle.ts';
import { facePlaces, type FacePlace, type Row } from './face-places.ts';

export type LightStand = {
  /** From the modifier's face, or the lit patch of a bounce, to the middle of the front row, as a tape measures it. */
  readonly distanceM: number;
  /** From the line subject to camera, positive to the camera's right. */
  readonly angleDeg: number;
  readonly heightM: number;
  /** Of the disc that the modifier's face is as large as; 0 for a point. */
  readonly sourceRadiusM: number;
  /** How its light thins out off its axis; absent: it does not. */
  readonly aim?: Aim | undefined;
};

/**
 * Where the axis points: turned off the middle face, level, towards the far end of the row. From
 * the front it then passes before the faces, from behind it passes behind them; a light on the
 * camera's axis is turned to the camera's left.
 */
export type Aim = { readonly offAxisDeg: number; readonly beam: BeamShape };

/** Metres from the middle face: to the camera's right, towards the camera, above the faces. */
export type StandPosition = {
  readonly rightM: number;
  readonly towardsCameraM: number;
  readonly aboveM: number;
};

/** Where a light stands. One higher above the faces than it is far from them hangs straight above. */
export function standPosition(
  stand: Pick<LightStand, 'distanceM' | 'angleDeg' | 'heightM'>,
  row: Pick<Row, 'faceHeightM'>,
): StandPosition {
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

/**
 * Light of one stand at any place against the middle face, as a ratio: the disc form of the
 * inverse square law, times what its beam sends there.
 */
export function lightAgainstMiddle(
  stand: LightStand,
  row: Pick<Row, 'faceHeightM'>,
): (place: StandPosition) => number {
  const at = standPosition(stand, row);
  const radiusSquared = stand.sourceRadiusM ** 2;
  const middle = stand.distanceM ** 2 + radiusSquared;
  const { aim } = stand;
  const squareTo = (place: StandPosition): number =>
    (at.rightM - place.rightM) ** 2 +
    (at.towardsCameraM - place.towardsCameraM) ** 2 +
    (at.aboveM - place.aboveM) ** 2;
  if (aim === undefined) return (place) => middle / (squareTo(place) + radiusSquared);
  const axis = axisOf(at, stand.distanceM, aim.offAxisDeg);
  const atMiddle = offAxisStops(aim.beam, aim.offAxisDeg);
  return (place) => {
    const square = squareTo(place);
    const along =
      (place.rightM - at.rightM) * axis.rightM +
      (place.towardsCameraM - at.towardsCameraM) * axis.towardsCameraM +
      (place.aboveM - at.aboveM) * axis.aboveM;
    const offDeg = square === 0 ? 0 : acosDeg(along / Math.sqrt(square));
    return (middle / (square + radiusSquared)) * 2 ** (offAxisStops(aim.beam, offDeg) - atMiddle);
  };
}

/** Unit vector along the axis. */
function axisOf(at: StandPosition, distanceM: number, offAxisDeg: number): StandPosition {
  const straight = {
    rightM: -at.rightM / distanceM,
    towardsCameraM: -at.towardsCameraM / distanceM,
    aboveM: -at.aboveM / distanceM,
  };
  const levelM = Math.hypot(straight.rightM, straight.towardsCameraM);
  const turn = at.rightM >= 0 ? 1 : -1;
  // Level and square to the way to the middle face.
  const side =
    levelM < 1e-9
      ? { rightM: -turn, towardsCameraM: 0 }
      : {
          rightM: (turn * straight.towardsCameraM) / levelM,
          towardsCameraM: (-turn * straight.rightM) / levelM,
        };
  const toFarEnd = side.rightM * turn <= 0 ? 1 : -1;
  const [cosine, sine] = [cosDeg(offAxisDeg), sinDeg(offAxisDeg) * toFarEnd];
  return {
    rightM: cosine * straight.rightM + sine * side.rightM,
    towardsCameraM: cosine * straight.towardsCameraM + sine * side.towardsCameraM,
    aboveM: cosine * straight.aboveM,
  };
}

export type LitFace = FacePlace & {
  /** Against the middle face. */
  readonly stops: number;
};

export type FaceSpread = {
  /** Every face, front row first, each row from the camera's left. */
  readonly faces: readonly LitFace[];
  readonly nearest: LitFace;
  readonly farthest: LitFace;
  /** Stops of the best lit face against the middle face. */
  readonly nearestStops: number;
  /** Stops of the least lit face against the middle face. */
  readonly farthestStops: number;
  readonly spreadStops: number;
};

/** Faces of the front row across the picture, left to right, metres from its middle. */
export const facePositionsM = (row: Row): readonly number[] =>
  facePlaces(row).flatMap((place) => (place.row === 0 ? [place.rightM] : []));

/** By how much best and least lit of some faces differ; the same as `faceSpread` says, for asking often. */
export function spreadStops(
  stand: LightStand,
  row: Pick<Row, 'faceHeightM'>,
  places: readonly FacePlace[],
): number {
  const against = lightAgainstMiddle(stand, row);
  let [least, most] = [Infinity, 0];
  for (const place of places) {
    const ratio = against(positionOf(place));
    if (ratio < least) least = ratio;
    if (ratio > most) most = ratio;
  }
  return Math.log2(most / least);
}

/** How one light falls off over the faces. */
export const faceSpread = (stand: LightStand, row: Row): FaceSpread =>
  spreadOfLights([{ stand, share: 1 }], row);

/** How lights that add up fall off over the faces, each with its share of the light at the middle face. */
export function spreadOfLights(
  lights: readonly { readonly stand: LightStand; readonly share: number }[],
  row: Row,
): FaceSpread {
  const against = lights.map(({ stand, share }) => ({
    share,
    of: lightAgainstMiddle(stand, row),
  }));
  const whole = lights.reduce((sum, { share }) => sum + share, 0);
  const faces = facePlaces(row).map((place): LitFace => {
    const there = positionOf(place);
    const ratio = against.reduce((sum, { share, of }) => sum + share * of(there), 0) / whole;
    return { ...place, stops: Math.log2(ratio) + 0 };
  });
  const [first] = faces;
  if (first === undefined) throw new Error('A group has at least one face.');
  const nearest = faces.reduce((best, face) => (face.stops > best.stops ? face : best), first);
  const farthest = faces.reduce((least, face) => (face.stops < least.stops ? face : least), first);
  return {
    faces,
    nearest,
    farthest,
    nearestStops: nearest.stops,
    farthestStops: farthest.stops,
    spreadStops: nearest.stops - farthest.stops,
  };
}

const positionOf = ({ rightM, behindM }: FacePlace): StandPosition => ({
  rightM,
  towardsCameraM: -behindM,
  aboveM: 0,
});
