import type { GeoPoint } from './geo-point.ts';

/** '45.6503° N, 13.7571° E': four decimals, 11 m or less. */
export const formatCoordinates = ({ latitudeDeg, longitudeDeg }: GeoPoint): string =>
  `${lettered(latitudeDeg, 'N', 'S')}, ${lettered(longitudeDeg, 'E', 'W')}`;

const lettered = (angleDeg: number, positive: string, negative: string): string => {
  const digits = Math.abs(angleDeg).toFixed(4);
  return `${digits}° ${angleDeg < 0 && Number(digits) !== 0 ? negative : positive}`;
};
