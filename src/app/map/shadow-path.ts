import { shadowsAt, type Shadows, type ShadowSun } from '../../core/skyline/shadow.ts';
import { shadowOutlines, type ShadowOutline } from '../../core/skyline/shadow-outlines.ts';
import type { Obstacle } from '../../core/skyline/obstacle.ts';
import { cosDeg, sinDeg } from '../../core/units/angle.ts';
import type { GroundView } from './ground-canvas.ts';
import { nearestCopyDeg } from './map-place.ts';
import { latitudeAt, longitudeAt, mercatorX, mercatorY } from './web-mercator.ts';

/** What throws shadows, made ready once for every minute and every view. */
export type ShadowField = {
  readonly outlines: readonly ShadowOutline[];
  /** Of each outline: west, south, east, north, degrees. */
  readonly boxes: Float64Array;
};

export function shadowField(obstacles: readonly Obstacle[]): ShadowField {
  const { outlines } = shadowOutlines(obstacles);
  const boxes = new Float64Array(outlines.length * 4);
  outlines.forEach(({ rings: [outer = new Float64Array()] }, index) => {
    let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let at = 0; at < outer.length; at += 2) {
      const [longitudeDeg = NaN, latitudeDeg = NaN] = [outer[at], outer[at + 1]];
      west = Math.min(west, longitudeDeg);
      east = Math.max(east, longitudeDeg);
      south = Math.min(south, latitudeDeg);
      north = Math.max(north, latitudeDeg);
    }
    boxes.set([west, south, east, north], index * 4);
  });
  return { outlines, boxes };
}

/** The shadows that reach into a view; null with the sun down. */
export function shadowsInView(
  field: ShadowField,
  at: { readonly sun: ShadowSun; readonly date: string; readonly view: GroundView },
): Shadows | null {
  // With nothing in it, it still says how long shadows are.
  const length = shadowsAt({ outlines: [] }, at);
  if (!length.ok) return null;
  const { lengthPerHeight } = length.value;
  const eastM = -sinDeg(at.sun.azimuthDeg) * lengthPerHeight;
  const northM = -cosDeg(at.sun.azimuthDeg) * lengthPerHeight;
  const { west, south, east, north } = boundsOf(at.view);
  const middleDeg = (west + east) / 2;
  const outlines = field.outlines.filter((outline, index) => {
    const { heightM } = outline.obstacle;
    const eastDeg = (eastM * heightM) / outline.eastM;
    const northDeg = (northM * heightM) / outline.northM;
    const own = field.boxes.subarray(index * 4, index * 4 + 4);
    const [ownWest = NaN, ownSouth = NaN, ownEast = NaN, ownNorth = NaN] = own;
    const copyDeg = nearestCopyDeg(ownWest, middleDeg) - ownWest;
    return (
      ownEast + copyDeg + Math.max(0, eastDeg) >= west &&
      ownWest + copyDeg + Math.min(0, eastDeg) <= east &&
      ownNorth + Math.max(0, northDeg) >= south &&
      ownSouth + Math.min(0, northDeg) <= north
    );
  });
  const shadows = shadowsAt({ outlines }, at);
  return shadows.ok ? shadows.value : null;
}

const boundsOf = ({ zoom, leftPx, topPx, widthPx, heightPx }: GroundView) => {
  const scale = 2 ** zoom;
  return {
    west: longitudeAt(leftPx / scale),
    east: longitudeAt((leftPx + widthPx) / scale),
    north: latitudeAt(topPx / scale),
    south: latitudeAt((topPx + heightPx) / scale),
  };
};

export type Path = Pick<CanvasRenderingContext2D, 'moveTo' | 'lineTo'>;

/**
 * Adds rings of longitudes and latitudes to a path in the pixels of a view. They are left open: a
 * fill closes them, and in some browsers each `closePath` takes as long as all of the path before it.
 */
export function addRings(
  path: Path,
  rings: Pick<Shadows['groups'][number], 'coordinates' | 'ringEnds'>,
  view: GroundView,
): void {
  const { coordinates, ringEnds } = rings;
  const scale = 2 ** view.zoom;
  const { west, east } = boundsOf(view);
  const middleDeg = (west + east) / 2;
  let corner = 0;
  for (const end of ringEnds) {
    const firstDeg = coordinates[2 * corner] ?? 0;
    const copyDeg = nearestCopyDeg(firstDeg, middleDeg) - firstDeg;
    const first = corner;
    for (; corner < end; corner += 1) {
      const x = mercatorX((coordinates[2 * corner] ?? 0) + copyDeg) * scale - view.leftPx;
      const y = mercatorY(coordinates[2 * corner + 1] ?? 0) * scale - view.topPx;
      if (corner === first) path.moveTo(x, y);
      else path.lineTo(x, y);
    }
  }
}
