import type { Corner } from '../../core/skyline/obstacle.ts';

type Corners = readonly Corner[];
type Side = -1 | 1;

const SIDES: readonly Side[] = [-1, 1];

/** A ring whose longitudes run on past ±180, as rings within ±180. RFC 7946, 3.1.9 */
export function cutRing(ring: Corners): readonly Corners[] {
  const edgeDeg = edgeOf(ring);
  if (edgeDeg === null) return [ring];
  return SIDES.map((side) => broughtBack(ringOn(ring, side, edgeDeg))).filter(
    (piece) => piece.length > 2,
  );
}

/** The same for a line. */
export function cutLine(line: Corners): readonly Corners[] {
  const edgeDeg = edgeOf(line);
  if (edgeDeg === null) return [line];
  return SIDES.flatMap((side) => runsOn(line, side, edgeDeg))
    .filter((run) => run.length > 1)
    .map(broughtBack);
}

function runsOn(line: Corners, side: Side, edgeDeg: number): readonly Corners[] {
  const runs: Corner[][] = [[]];
  for (const [index, corner] of line.entries()) {
    const before = line[index - 1] ?? corner;
    const isIn = side * (corner[0] - edgeDeg) >= 0;
    const wasIn = side * (before[0] - edgeDeg) >= 0;
    if (isIn !== wasIn) {
      if (isIn) runs.push([]);
      runs.at(-1)?.push(crossingOf(before, corner, edgeDeg));
    }
    if (isIn) runs.at(-1)?.push(corner);
  }
  return runs;
}

/** The antimeridian that is crossed, 180 or −180; null for none. */
function edgeOf(corners: Corners): number | null {
  if (corners.some(([longitudeDeg]) => longitudeDeg > 180)) return 180;
  return corners.some(([longitudeDeg]) => longitudeDeg < -180) ? -180 : null;
}

/** What of a ring lies on one side of a meridian, closed along it. */
const ringOn = (ring: Corners, side: Side, edgeDeg: number): readonly Corner[] =>
  ring.flatMap((corner, index) => {
    const before = ring.at(index - 1) ?? corner;
    const isIn = side * (corner[0] - edgeDeg) >= 0;
    const wasIn = side * (before[0] - edgeDeg) >= 0;
    const crossing = isIn === wasIn ? [] : [crossingOf(before, corner, edgeDeg)];
    return isIn ? [...crossing, corner] : crossing;
  });

const crossingOf = (from: Corner, to: Corner, edgeDeg: number): Corner => {
  const share = (edgeDeg - from[0]) / (to[0] - from[0]);
  return [edgeDeg, Math.round(1e6 * (from[1] + share * (to[1] - from[1]))) / 1e6];
};

/** A piece within ±180, by its middle. */
function broughtBack(piece: Corners): Corners {
  const longitudes = piece.map(([longitudeDeg]) => longitudeDeg);
  const middleDeg = (Math.min(...longitudes) + Math.max(...longitudes)) / 2;
  const turnDeg = middleDeg > 180 ? -360 : middleDeg < -180 ? 360 : 0;
  return piece.map(([longitudeDeg, latitudeDeg]) => [
    Math.round(1e6 * (longitudeDeg + turnDeg)) / 1e6,
    latitudeDeg,
  ]);
}
