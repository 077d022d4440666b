import { alignmentJob } from './alignment-job.ts';
import { shadowUnionJob } from './shadow-union-job.ts';
import { terrainSkylineJob } from './terrain-skyline-job.ts';

/** What the ground worker can do, by the name it is asked for. */
export const GROUND_JOBS = {
  'terrain-skyline': terrainSkylineJob,
  'shadow-union': shadowUnionJob,
  alignment: alignmentJob,
} as const;
