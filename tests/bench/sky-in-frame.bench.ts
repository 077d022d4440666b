import { generalSky } from '../../src/core/sky/general-sky.ts';
import type { GeneralSkyType } from '../../src/core/sky/general-sky.data.ts';
import { skyInFrame } from '../../src/core/sky/sky-in-frame.ts';
import { pixelSky } from '../support/pixel-sky.ts';
import { seededRandom, seededScene } from '../support/seeded-framings.ts';
import type { Bench } from './bench.ts';

type FrameBench = {
  readonly frameMs: number;
  readonly pixelsMs: number;
  /** How many frames are read in the time of one look through every pixel. */
  readonly framesPerPixelLook: number;
};

const WARM_UP = 5;
const RUNS = 20;
const FRAMINGS = 20;

/** Frames against a look through every pixel, in the same run. */
const benchFrames = (): FrameBench => {
  const random = seededRandom(7);
  const scenes = Array.from({ length: FRAMINGS }, (_, at) => {
    const scene = seededScene(random);
    return { ...scene, sky: generalSky(((at % 15) + 1) as GeneralSkyType, scene.sun) };
  });
  // Turn and turn about, so that whatever else the machine does slows both.
  const looks = scenes.map((scene) => ({
    frameMs: medianMs(() => skyInFrame(scene)),
    pixelsMs: timeMs(() => pixelSky(scene)),
  }));
  const frameMs = mean(looks.map((look) => look.frameMs));
  const pixelsMs = mean(looks.map((look) => look.pixelsMs));
  return {
    frameMs,
    pixelsMs,
    framesPerPixelLook: pixelsMs / frameMs,
  };
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const medianMs = (work: () => unknown): number => {
  for (let run = 0; run < WARM_UP; run += 1) work();
  return medianOf(Array.from({ length: RUNS }, () => timeMs(work)));
};

const timeMs = (work: () => unknown): number => {
  const startMs = performance.now();
  work();
  return performance.now() - startMs;
};

const medianOf = (values: readonly number[]): number =>
  values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? NaN;

export const benches: readonly Bench[] = [
  {
    name: 'Sky in frame against pixels',
    run: async () => {
      const { framesPerPixelLook } = benchFrames();
      return [
        {
          figure: 'frames read in the time of one look through every pixel',
          value: framesPerPixelLook,
          unit: '×',
          target: 100,
          ok: framesPerPixelLook >= 100,
        },
      ];
    },
  },
];
