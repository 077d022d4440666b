import { skylineAltitude, type Skyline } from '../skyline/skyline.ts';
import { projection, type Framing, type PicturePoint } from './framing.ts';

const STEP_DEG = 0.05;
/** The picture of a lens seldom sees more to one side; farther points are in no frame. */
const MOST_TURN_DEG = 89;

/**
 * Height of the edge between ground and sky for each column of pixels, in pixels from the top,
 * also outside the picture; the higher of skyline and horizon.
 */
export function skylineInPicture(
  framing: Framing,
  skyline: Skyline,
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
): Float32Array {
  const edge = skylineAltitude(skyline);
  const { toPicture } = projection(framing);
  const yOf = ({ yFraction }: PicturePoint): number => (0.5 - yFraction) * heightPx;
  const edgePx = new Float32Array(widthPx).fill(heightPx * 3);
  let before: { readonly x: number; readonly y: number } | null = null;
  for (let turnDeg = -MOST_TURN_DEG; turnDeg <= MOST_TURN_DEG; turnDeg += STEP_DEG) {
    const azimuthDeg = framing.bearingDeg + turnDeg;
    const point = toPicture({ azimuthDeg, altitudeDeg: Math.max(0, edge(azimuthDeg)) });
    const now = point && { x: (point.xFraction + 0.5) * widthPx, y: yOf(point) };
    if (before !== null && now !== null) drawStretch(edgePx, before, now);
    before = now;
  }
  return edgePx;
}

function drawStretch(
  edgePx: Float32Array,
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
): void {
  const [left, right] = from.x <= to.x ? [from, to] : [to, from];
  const first = Math.max(0, Math.ceil(left.x - 0.5));
  const last = Math.min(edgePx.length - 1, Math.floor(right.x - 0.5));
  for (let column = first; column <= last; column += 1) {
    const share = right.x === left.x ? 0 : (column + 0.5 - left.x) / (right.x - left.x);
    const y = left.y + share * (right.y - left.y);
    if (y < (edgePx[column] ?? Infinity)) edgePx[column] = y;
  }
}
