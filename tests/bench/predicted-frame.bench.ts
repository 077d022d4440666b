import { daylightAt } from '../../src/core/daylight/daylight-at.ts';
import { predictedFrame, type FrameScene } from '../../src/core/plan/predicted-frame.ts';
import type { Bench, Figure } from './bench.ts';

const RUNS = 15;

const sun = { azimuthDeg: 292, trueAltitudeDeg: 4, apparentAltitudeDeg: 4.2 };

/** Four lit figures before an evening sky, 1,200 × 800. */
const scene = (widthPx: number, heightPx: number): FrameScene => ({
  widthPx,
  heightPx,
  framing: {
    bearingDeg: 300,
    tiltDeg: 6,
    focalLengthMm: 35,
    sensorWidthMm: 36,
    sensorHeightMm: 24,
  },
  cameraHeightM: 1.4,
  condition: 'broken-cloud',
  sun,
  daylight: daylightAt({ sun, condition: 'broken-cloud', dayOfYear: 134, elevationM: 3 }),
  skyline: [
    { azimuthDeg: 270, altitudeDeg: 2 },
    { azimuthDeg: 300, altitudeDeg: 5 },
    { azimuthDeg: 330, altitudeDeg: 1 },
  ],
  cameraEv: 14,
  whiteBalance: { kelvin: 5600, tint: 0 },
  lensGains: [1, 1, 1],
  graduation: { stops: 2, fraction: 0.1 },
  ground: [0.04, 0.04, 0.04],
  figures: [-1.05, -0.35, 0.35, 1.05].map((rightM) => ({
    rightM,
    awayM: 5.1,
    faceHeightM: 1.65,
    pose: 'standing',
    litRight: true,
    litSkin: [0.3, 0.25, 0.2],
    darkSkin: [0.08, 0.07, 0.06],
    litCloth: [0.1, 0.1, 0.1],
    darkCloth: [0.03, 0.03, 0.03],
    leftEdge: [0.5, 0.5, 0.5],
    rightEdge: null,
  })),
});

const medianMs = (asked: FrameScene): number => {
  for (let run = 0; run < 4; run += 1) predictedFrame(asked);
  const times = Array.from({ length: RUNS }, () => {
    const startMs = performance.now();
    predictedFrame(asked);
    return performance.now() - startMs;
  });
  return times.toSorted((one, other) => one - other)[Math.floor(RUNS / 2)] ?? NaN;
};

const row = (figure: string, value: number, target: number): Figure => ({
  figure,
  value,
  unit: 'ms',
  target,
  ok: value <= target,
});

export const benches: readonly Bench[] = [
  {
    name: 'Predicted frame of four figures',
    run: async () => [
      row('1200 × 800, exact', medianMs(scene(1200, 800)), 50),
      row('600 × 400', medianMs(scene(600, 400)), 50),
    ],
  },
];
