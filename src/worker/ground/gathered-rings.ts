import { localPlane, type LocalPlane } from '../../core/place/local-plane.ts';
import type { ShadowGroup } from '../../core/skyline/shadow.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';

/** Centimetres east and north of the plane's origin, whole. */
export type CmPoint = { readonly x: number; readonly y: number };
export type CmPath = CmPoint[];

export type Gathered = {
  /** Rings of outlines near one another, those of one outline together. */
  readonly bundles: readonly CmPath[][];
  readonly plane: LocalPlane;
  /** Of the plane's origin. */
  readonly longitudeDeg: number;
};

/** The plane's areas are true to a 30,000th part there. */
const FARTHEST_M = 50_000;
const OUTLINES_A_BUNDLE = 100;

type Outline = { readonly paths: CmPath[]; readonly code: number };

/** The rings of shadows on one plane, in bundles of neighbours; a sentence where they lie too far apart. */
export function gatheredRings(groups: readonly ShadowGroup[]): Result<Gathered, string> {
  const [longitudeDeg = 0, latitudeDeg = 0] = groups[0]?.coordinates ?? [];
  const plane = localPlane({ latitudeDeg, longitudeDeg });
  const outlines: Outline[] = [];
  for (const group of groups)
    for (const [index, end] of group.outlineEnds.entries()) {
      const from = index === 0 ? 0 : (group.outlineEnds[index - 1] ?? 0);
      const paths = pathsOf(group, { from, end }, plane);
      const [first] = paths[0] ?? [];
      if (first === undefined) continue;
      if (Math.hypot(first.x, first.y) > 100 * FARTHEST_M)
        return fail(
          `Some outlines lie more than ${FARTHEST_M / 1000} km from the first; expected those of one neighbourhood.`,
        );
      outlines.push({ paths, code: neighbourCode(first) });
    }
  outlines.sort((first, second) => first.code - second.code);
  const bundles: CmPath[][] = [];
  for (let at = 0; at < outlines.length; at += OUTLINES_A_BUNDLE)
    bundles.push(outlines.slice(at, at + OUTLINES_A_BUNDLE).flatMap(({ paths }) => paths));
  return ok({ bundles, plane, longitudeDeg });
}

function pathsOf(
  { coordinates, ringEnds }: ShadowGroup,
  rings: { readonly from: number; readonly end: number },
  plane: LocalPlane,
): CmPath[] {
  const paths: CmPath[] = [];
  for (let ring = rings.from; ring < rings.end; ring += 1) {
    const path: CmPath = [];
    const last = ringEnds[ring] ?? 0;
    for (let corner = ring === 0 ? 0 : (ringEnds[ring - 1] ?? 0); corner < last; corner += 1) {
      const [eastM, northM] = plane.toPlane(
        coordinates[2 * corner] ?? NaN,
        coordinates[2 * corner + 1] ?? NaN,
      );
      path.push({ x: Math.round(100 * eastM), y: Math.round(100 * northM) });
    }
    paths.push(path);
  }
  return paths;
}

const CELL_CM = 5000;
const HALF_CELLS = 2 ** 15;

/** The digits of both coordinates in turn: neighbours mostly have near numbers. */
function neighbourCode({ x, y }: CmPoint): number {
  return 2 * spread(x) + spread(y);
}

function spread(cm: number): number {
  let rest = Math.floor(cm / CELL_CM) + HALF_CELLS;
  let code = 0;
  for (let place = 1; rest > 0; place *= 4) {
    code += place * (rest % 2);
    rest = Math.floor(rest / 2);
  }
  return code;
}
