import type { SkyCondition } from '../../../core/daylight/sky-condition.ts';
import { ev100FromLuminance } from '../../../core/exposure/exposure-value.ts';
import { projection, type Framing, type PicturePoint } from '../../../core/sky/framing.ts';
import type { Patch } from '../../../core/sky/patch.ts';
import { fillLuminance, skyField } from '../../../core/sky/sky-field.ts';
import { skyModel, skyPoints } from '../../../core/sky/sky-model.ts';
import {
  patchRectangle,
  type PictureRectangle,
  WHOLE_PICTURE,
} from '../../../core/sky/picture-rectangle.ts';
import { skylineAltitude, type Skyline } from '../../../core/skyline/skyline.ts';
import type { SpotLight } from '../../../core/spot/spot-light.ts';
import { wrapDeg180 } from '../../../core/units/angle.ts';
import type { Direction } from '../../../core/units/direction.ts';
import { stopLevel } from '../../charts/stop-tone.ts';

/** Tones of the low sky all round, row by row from the top, north to north. */
export const STRIP_COLUMNS = 144;
export const STRIP_ROWS = 14;

const LEAST_TOP_DEG = 25;
const MOST_TOP_DEG = 60;

/** The grid's luminance in cd/m² at a minute's light; what does not change with it is worked out once. */
export function lowSkyReader(
  condition: SkyCondition,
  topDeg: number,
): (light: Pick<SpotLight, 'sun' | 'daylight'>) => Float64Array {
  const model = skyModel(condition);
  const directions: Direction[] = [];
  for (let row = 0; row < STRIP_ROWS; row += 1)
    for (let column = 0; column < STRIP_COLUMNS; column += 1)
      directions.push({
        azimuthDeg: (360 * (column + 0.5)) / STRIP_COLUMNS,
        altitudeDeg: topDeg * (1 - (row + 0.5) / STRIP_ROWS),
      });
  const points = skyPoints(model.standard, directions);
  return (light) => {
    const luminanceCdM2 = new Float64Array(directions.length);
    fillLuminance(skyField(model, light), points, luminanceCdM2);
    return luminanceCdM2;
  };
}

/** Level, 0 to 255, of a luminance when the given EV is the grey card; clips without a curve. */
export const toneOf = (luminanceCdM2: number, cardEv: number): number =>
  stopLevel(ev100FromLuminance(luminanceCdM2) - cardEv);

/** How far up the strip must reach to show framing and skyline, in fives. */
export function stripTopDeg(framing: Framing, skyline: Skyline): number {
  const { toDirection } = projection(framing);
  const highest = Math.max(
    toDirection({ xFraction: 0, yFraction: 0.5 }).altitudeDeg,
    ...skyline.map(({ altitudeDeg }) => altitudeDeg),
  );
  return Math.min(MOST_TOP_DEG, Math.max(LEAST_TOP_DEG, 5 * Math.ceil((highest + 2) / 5)));
}

export type StripPoint = { readonly azimuthDeg: number; readonly altitudeDeg: number };

/** The framing's edge as projected; azimuths run on from the bearing, so they may leave 0 to 360. */
export const framingOutline = (framing: Framing): readonly StripPoint[] =>
  outline(framing, WHOLE_PICTURE);

export function patchOutline(framing: Framing, patch: Patch): readonly StripPoint[] {
  const rectangle = patchRectangle(patch);
  return rectangle === null ? [] : outline(framing, rectangle);
}

const STEPS_A_SIDE = 12;

function outline(framing: Framing, rectangle: PictureRectangle): readonly StripPoint[] {
  const { toDirection } = projection(framing);
  return roundRectangle(rectangle).map((point) => {
    const { azimuthDeg, altitudeDeg } = toDirection(point);
    return {
      azimuthDeg: framing.bearingDeg + wrapDeg180(azimuthDeg - framing.bearingDeg),
      altitudeDeg,
    };
  });
}

/** From the lower left corner to the right and round. */
function roundRectangle({ left, right, bottom, top }: PictureRectangle): readonly PicturePoint[] {
  const corners = [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ] as const;
  return corners.flatMap(([x, y], side) => {
    const [nextX, nextY] = corners[(side + 1) % corners.length] ?? [x, y];
    return Array.from({ length: STEPS_A_SIDE }, (_, step) => {
      const share = step / STEPS_A_SIDE;
      return { xFraction: x + (nextX - x) * share, yFraction: y + (nextY - y) * share };
    });
  });
}

/** The skyline as steps over every degree and at its own corners, from north round to north. */
export function skylineSteps(skyline: Skyline): readonly StripPoint[] {
  const altitudeOf = skylineAltitude(skyline);
  const azimuths = new Set([
    ...Array.from({ length: 361 }, (_, azimuthDeg) => azimuthDeg),
    ...skyline.map(({ azimuthDeg }) => azimuthDeg),
  ]);
  return [...azimuths]
    .toSorted((first, second) => first - second)
    .map((azimuthDeg) => ({ azimuthDeg, altitudeDeg: altitudeOf(azimuthDeg % 360) }));
}

const UNDER_THE_STRIP_DEG = -12;

/** The ground of a stretch, down to below the strip, from its steps. */
export function stretchOutline(
  steps: readonly StripPoint[],
  fromDeg: number,
  toDeg: number,
): readonly StripPoint[] {
  const inside = steps.filter(({ azimuthDeg }) => azimuthDeg > fromDeg && azimuthDeg < toDeg);
  return [
    { azimuthDeg: fromDeg, altitudeDeg: UNDER_THE_STRIP_DEG },
    { azimuthDeg: fromDeg, altitudeDeg: altitudeAt(steps, fromDeg) },
    ...inside,
    { azimuthDeg: toDeg, altitudeDeg: altitudeAt(steps, toDeg) },
    { azimuthDeg: toDeg, altitudeDeg: UNDER_THE_STRIP_DEG },
  ];
}

function altitudeAt(steps: readonly StripPoint[], azimuthDeg: number): number {
  const index = steps.findIndex((step) => step.azimuthDeg >= azimuthDeg);
  const after = steps[index] ?? { azimuthDeg, altitudeDeg: 0 };
  const before = steps[index - 1] ?? after;
  const wideDeg = after.azimuthDeg - before.azimuthDeg;
  const share = wideDeg > 0 ? (azimuthDeg - before.azimuthDeg) / wideDeg : 1;
  return before.altitudeDeg + share * (after.altitudeDeg - before.altitudeDeg);
}
