import type { ElevationGrid } from '../../core/skyline/elevation-grid.ts';
import { fillVoids } from '../../core/skyline/fill-voids.ts';
import {
  DEFAULT_REACH_M,
  terrainSkyline,
  type TerrainQuestion,
  type TerrainSkyline,
} from '../../core/skyline/terrain-skyline.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { readElevationFile } from '../../exchange/elevation/elevation-file.ts';
import { decodePng, type DecodePng } from './png-pixels.ts';
import { tileGrids, type HeightPng } from './tile-grids.ts';

export type TerrainSkylineInput = Omit<TerrainQuestion, 'grids' | 'raysPerDegree'> & {
  readonly files: readonly { readonly name: string; readonly blob: Blob }[];
  readonly tiles: readonly HeightPng[];
};

export type TerrainSkylineAnswer = TerrainSkyline & {
  /** Names of the files and tiles that were read, the given order kept. */
  readonly sources: readonly string[];
  /** Names of files of which nothing lies within reach. */
  readonly unusedFiles: readonly string[];
  /** Heights that no land has, found and treated as voids. */
  readonly absurdCount: number;
};

/** Shares of the whole: reading, filling, and the rest for the rays. */
const READ_UNTIL = 0.3;
const FILLED_UNTIL = 0.4;
const BREATH_MS = 20;

/** The skyline of the terrain round a spot from elevation files and height tiles, or a sentence for each fault. */
export async function* terrainSkylineJob(
  input: TerrainSkylineInput,
  decode: DecodePng = decodePng,
): AsyncGenerator<number, Result<TerrainSkylineAnswer, string>> {
  const { files, tiles, ...question } = input;
  const { place, reachM = DEFAULT_REACH_M } = question;
  const grids: ElevationGrid[] = [];
  const unusedFiles: string[] = [];
  const faults: string[] = [];
  const parts = files.length + 1;
  const area = { latitudeDeg: place.latitudeDeg, longitudeDeg: place.longitudeDeg, reachM };
  for (const [at, file] of files.entries()) {
    const read = yield* part(readElevationFile(file, area), {
      from: (READ_UNTIL * at) / parts,
      to: (READ_UNTIL * (at + 1)) / parts,
    });
    if (!read.ok) faults.push(read.problem);
    else if (read.value.length === 0) unusedFiles.push(file.name);
    else grids.push(...read.value);
  }
  const ofTiles = yield* part(tileGrids(tiles, place, decode), {
    from: (READ_UNTIL * (parts - 1)) / parts,
    to: READ_UNTIL,
  });
  if (!ofTiles.ok) faults.push(ofTiles.problem);
  if (!ofTiles.ok || faults.length > 0) return fail(faults.join(' '));
  grids.push(...ofTiles.value);
  if (grids.length === 0 && unusedFiles.length > 0)
    return fail(
      `No elevation data lie within ${reachM / 1000} km of the spot: ${unusedFiles.join(', ')} lie elsewhere.`,
    );

  const filled: ElevationGrid[] = [];
  for (const [at, grid] of grids.entries())
    filled.push(
      yield* part(fillVoids(grid), {
        from: READ_UNTIL + ((FILLED_UNTIL - READ_UNTIL) * at) / grids.length,
        to: READ_UNTIL + ((FILLED_UNTIL - READ_UNTIL) * (at + 1)) / grids.length,
      }),
    );
  const skyline = yield* part(terrainSkyline({ ...question, grids: filled }), {
    from: FILLED_UNTIL,
    to: 1,
  });
  if (!skyline.ok) return skyline;
  return ok({
    ...skyline.value,
    sources: [...new Set(grids.map(({ name }) => name))],
    unusedFiles,
    absurdCount: grids.reduce((sum, { absurdCount }) => sum + absurdCount, 0),
  });
}

/** A part of the work, its progress a stretch of the whole, told no oftener than others need to be let in. */
async function* part<Answer>(
  work: AsyncGenerator<number, Answer> | Generator<number, Answer>,
  stretch: { readonly from: number; readonly to: number },
): AsyncGenerator<number, Answer> {
  let toldAtMs = performance.now();
  for (;;) {
    const step = await work.next();
    if (step.done === true) {
      yield stretch.to;
      return step.value;
    }
    if (performance.now() - toldAtMs < BREATH_MS) continue;
    yield stretch.from + (stretch.to - stretch.from) * step.value;
    toldAtMs = performance.now();
  }
}
