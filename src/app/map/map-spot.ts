import type { GeoPoint } from '../../core/place/geo-point.ts';

export type MapSpot = {
  readonly id: string;
  readonly name: string;
  readonly point: GeoPoint;
  /** Clockwise from true north. */
  readonly bearingDeg: number;
  readonly horizontalFovDeg: number;
  /** From the camera to the subject; drawn once the scale allows. */
  readonly cameraDistanceM?: number;
  /** Equal steps of azimuth from north, clockwise, each the middle of its sector; NaN is ground. */
  readonly ringEv: readonly number[] | null;
};
