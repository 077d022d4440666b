import { cosDeg } from '../../core/units/angle.ts';

/** Equator of the Web Mercator sphere (6,378,137 m) over the 256 px of zoom 0. */
const METRES_PER_PIXEL_AT_ZOOM_0 = (2 * Math.PI * 6_378_137) / 256;

/** Metres on the ground for a pixel of the map; within 0.7 % on the ellipsoid, in any direction. */
export const metresPerPixel = ({
  latitudeDeg,
  zoom,
}: {
  readonly latitudeDeg: number;
  readonly zoom: number;
}): number => (METRES_PER_PIXEL_AT_ZOOM_0 * cosDeg(latitudeDeg)) / 2 ** zoom;
