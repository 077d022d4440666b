import { cosDeg, sinDeg } from '../../core/units/angle.ts';

type Offset = { readonly x: number; readonly y: number };

export type Wedge = {
  /** From the spot, along both edges of the field of view. */
  readonly left: Offset;
  readonly right: Offset;
  /** Middle of the far side, on the bearing. */
  readonly handle: Offset;
};

/** Wider fields are drawn as this one: the far side would pass through the spot. */
const WIDEST_DEG = 150;

/** Corners of the framing on a map with north up, x to the east, y to the south. */
export const wedge = ({
  bearingDeg,
  horizontalFovDeg,
  edgePx,
}: {
  readonly bearingDeg: number;
  readonly horizontalFovDeg: number;
  readonly edgePx: number;
}): Wedge => {
  const halfDeg = Math.min(WIDEST_DEG, horizontalFovDeg) / 2;
  return {
    left: offset(bearingDeg - halfDeg, edgePx),
    right: offset(bearingDeg + halfDeg, edgePx),
    handle: offset(bearingDeg, edgePx * cosDeg(halfDeg)),
  };
};

/** The line across the wedge at a depth along the bearing, as an SVG path. */
export const acrossPath = ({ left, right, handle }: Wedge, depthPx: number): string => {
  const share = depthPx / Math.hypot(handle.x, handle.y);
  return `M${pair(scaled(left, share))}L${pair(scaled(right, share))}`;
};

export const wedgePath = ({ left, right }: Wedge): string => `M0,0L${pair(left)}L${pair(right)}Z`;

const offset = (azimuthDeg: number, radius: number): Offset => ({
  x: radius * sinDeg(azimuthDeg),
  y: -radius * cosDeg(azimuthDeg),
});

const scaled = ({ x, y }: Offset, share: number): Offset => ({ x: x * share, y: y * share });

const pair = ({ x, y }: Offset): string => `${x.toFixed(1)},${y.toFixed(1)}`;
