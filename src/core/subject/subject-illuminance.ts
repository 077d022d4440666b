import { luminancesTowards, type Sky } from '../sky/condition-sky.ts';
import type { SunPosition } from '../sun-moon/sun-position.ts';
import { readSkylight, type SubjectIlluminance, withBeam } from './subject-reading.ts';
import { type SubjectScene, subjectSamples } from './subject-samples.ts';

/**
 * What falls on a subject that looks at the camera. Everything that is not sky, below the skyline
 * and in the lower half, has the luminance of ground lit like the spot's: reflectance times
 * groundLux over π. The plane is what adds to a key light on the face (calibration constant 250),
 * the dome what a dome meter reads (330): up to two stops apart. [iso2720]
 */
export const subjectIlluminance = (
  input: SubjectScene & {
    readonly sun: SunPosition;
    readonly beamNormalLux: number;
    readonly sky: Sky;
    readonly groundReflectance: number;
  },
): SubjectIlluminance => {
  const samples = subjectSamples(input);
  const luminanceCdM2 = luminancesTowards(input.sky, samples.directions);
  return withBeam(samples, readSkylight(samples, luminanceCdM2), input);
};
