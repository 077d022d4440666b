import type { PhotoSight, PixelPoint } from './photo-sight.ts';
import type { Skyline, SkylinePoint } from './skyline.ts';

/** Points of one line closer than this say the same; the higher stays. */
const APART_DEG = 0.2;
/** A straight stroke of a picture is no straight line in azimuth and altitude; it is read so often. */
const READ_EVERY_DEG = 2;

/**
 * A line drawn along the skyline of a photo as a run of directions, azimuths rising. The line is
 * straight in the picture between the places drawn; what was drawn twice keeps the higher.
 */
export function photoRun(sight: PhotoSight, drawn: readonly PixelPoint[]): Skyline {
  const places = drawn
    .map((pixel) => ({ pixel, azimuthDeg: sight.directionAt(pixel).azimuthDeg }))
    .toSorted((one, other) => one.azimuthDeg - other.azimuthDeg);
  const pixels = places.flatMap(({ pixel, azimuthDeg }, index) => {
    const next = places[index + 1];
    if (next === undefined) return [pixel];
    const steps = Math.max(1, Math.ceil((next.azimuthDeg - azimuthDeg) / READ_EVERY_DEG));
    return Array.from({ length: steps }, (_, step) => between(pixel, next.pixel, step / steps));
  });
  return withoutLower(pixels.map((pixel) => sight.directionAt(pixel)));
}

const between = (from: PixelPoint, to: PixelPoint, share: number): PixelPoint => ({
  xPx: from.xPx + share * (to.xPx - from.xPx),
  yPx: from.yPx + share * (to.yPx - from.yPx),
});

function withoutLower(points: Skyline): Skyline {
  const kept: SkylinePoint[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    if (last === undefined || point.azimuthDeg - last.azimuthDeg >= APART_DEG) kept.push(point);
    else if (point.altitudeDeg > last.altitudeDeg) kept[kept.length - 1] = point;
  }
  return kept;
}
