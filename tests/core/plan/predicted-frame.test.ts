import { describe, expect, test } from 'vitest';

import { applied, xyzOf } from '../../../src/core/colour/chromaticity.ts';
import { encodeSrgb } from '../../../src/core/colour/srgb.ts';
import { cameraMatrix } from '../../../src/core/colour/white-balance.ts';
import { daylightAt } from '../../../src/core/daylight/daylight-at.ts';
import { SKY_CONDITIONS, type SkyCondition } from '../../../src/core/daylight/sky-condition.ts';
import { luminanceFromEv100 } from '../../../src/core/exposure/exposure-value.ts';
import { predictedFrame, type FrameScene } from '../../../src/core/plan/predicted-frame.ts';
import { conditionSky } from '../../../src/core/sky/condition-sky.ts';
import { projection } from '../../../src/core/sky/framing.ts';
import { skyColour } from '../../../src/core/sky/sky-colour.ts';
import { skyInFrame } from '../../../src/core/sky/sky-in-frame.ts';
import { angleBetweenDeg } from '../../../src/core/units/direction.ts';

const framing = {
  bearingDeg: 300,
  tiltDeg: 8,
  focalLengthMm: 28,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
};

const sunAt = (altitudeDeg: number, azimuthDeg: number): FrameScene['sun'] => ({
  azimuthDeg,
  trueAltitudeDeg: altitudeDeg,
  apparentAltitudeDeg: altitudeDeg,
});

const scene = (
  condition: SkyCondition,
  sun: FrameScene['sun'],
  change: Partial<FrameScene> = {},
): FrameScene => ({
  widthPx: 300,
  heightPx: 200,
  framing,
  cameraHeightM: 1.4,
  condition,
  sun,
  daylight: daylightAt({ sun, condition, dayOfYear: 134, elevationM: 3 }),
  skyline: [],
  cameraEv: 12,
  whiteBalance: { kelvin: 5600, tint: 0 },
  lensGains: [1, 1, 1],
  graduation: null,
  ground: [0.05, 0.05, 0.05],
  figures: [],
  ...change,
});

/** The same sky, each pixel by itself, by the slow way. */
function pixelByItself(asked: FrameScene, x: number, y: number): readonly number[] {
  const sky = conditionSky({
    sun: asked.sun,
    condition: asked.condition,
    dayOfYear: 134,
    elevationM: 3,
  });
  const direction = projection(asked.framing).toDirection({
    xFraction: (x + 0.5) / asked.widthPx - 0.5,
    yFraction: 0.5 - (y + 0.5) / asked.heightPx,
  });
  const linear = (0.18 * sky(direction)) / luminanceFromEv100(asked.cameraEv);
  const rgb = applied(
    cameraMatrix(asked.whiteBalance),
    xyzOf(skyColour(asked.condition, asked.sun)(direction), linear),
  );
  return rgb.map((value) => 255 * encodeSrgb(value));
}

describe('the predicted frame is the sky as each pixel would have it', () => {
  const skies: readonly (readonly [SkyCondition, FrameScene['sun'], number])[] = [
    ['clear', sunAt(25, 200), 14],
    ['clear', sunAt(4, 305), 14.5],
    ['clear', sunAt(-3, 300), 9.5],
    ['haze', sunAt(12, 290), 14.5],
    ['broken-cloud', sunAt(8, 250), 12.5],
    ['bright-overcast', sunAt(30, 120), 13],
    ['heavy-overcast', sunAt(-1, 300), 7],
  ];
  test.each(skies)('%s, sun at %o', (condition, sun, cameraEv) => {
    const asked = scene(condition, sun, { cameraEv, widthPx: 1200, heightPx: 800 });
    const { rgba } = predictedFrame(asked);
    const { toDirection } = projection(framing);
    let worst = 0;
    for (let y = 3; y < 800; y += 29)
      for (let x = 2; x < 1200; x += 23) {
        const direction = toDirection({
          xFraction: (x + 0.5) / 1200 - 0.5,
          yFraction: 0.5 - (y + 0.5) / 800,
        });
        const fromSun = angleBetweenDeg(direction, {
          azimuthDeg: sun.azimuthDeg,
          altitudeDeg: sun.apparentAltitudeDeg,
        });
        if (direction.altitudeDeg < 0.3 || fromSun < 2) continue;
        pixelByItself(asked, x, y).forEach((value, channel) => {
          worst = Math.max(worst, Math.abs(value - (rgba[4 * (y * 1200 + x) + channel] ?? NaN)));
        });
      }
    // Two levels of 255, half of one of them from rounding.
    expect(worst).toBeLessThanOrEqual(2);
  });

  test.each(SKY_CONDITIONS)(
    '%s: its mean sky, read back, is the sky in frame within 0.05 stop',
    (condition) => {
      const sun = sunAt(20, 180);
      const reading = skyInFrame({
        sky: conditionSky({ sun, condition, dayOfYear: 134, elevationM: 3 }),
        framing,
        skyline: [{ azimuthDeg: 0, altitudeDeg: 6 }],
        sun,
      });
      if (reading === null) throw new Error('the frame shows sky');
      // Bright enough to be read, dark enough that nothing clips.
      const asked = scene(condition, sun, {
        cameraEv: reading.maxEv - 1.2,
        skyline: [{ azimuthDeg: 0, altitudeDeg: 6 }],
        ground: [0, 0, 0],
      });
      const { rgba } = predictedFrame(asked);
      const { toDirection } = projection(framing);
      let [sum, count] = [0, 0];
      for (let y = 0; y < 200; y += 1)
        for (let x = 0; x < 300; x += 1) {
          const { altitudeDeg } = toDirection({
            xFraction: (x + 0.5) / 300 - 0.5,
            yFraction: 0.5 - (y + 0.5) / 200,
          });
          if (altitudeDeg < 6.2) continue;
          const at = 4 * (y * 300 + x);
          const [r, g, b] = [0, 1, 2].map((channel) => decoded(rgba[at + channel] ?? NaN));
          sum += 0.2126 * (r ?? NaN) + 0.7152 * (g ?? NaN) + 0.0722 * (b ?? NaN);
          count += 1;
        }
      const stops = Math.log2(sum / count / 0.18);
      expect(Math.abs(stops - (reading.meanEv - asked.cameraEv))).toBeLessThan(0.05);
    },
  );
});

/** IEC 61966-2-1, written here again. */
const decoded = (byte: number): number => {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};

const pixelAt = (
  { rgba, widthPx }: ReturnType<typeof predictedFrame>,
  x: number,
  y: number,
): readonly number[] => Array.from(rgba.slice(4 * (y * widthPx + x), 4 * (y * widthPx + x) + 3));

const middle = (frame: ReturnType<typeof predictedFrame>, y = 60): readonly number[] =>
  pixelAt(frame, 150, y);
const lightOf = (frame: ReturnType<typeof predictedFrame>, y = 60): number =>
  decoded(middle(frame, y)[1] ?? NaN);

describe('settings and filters', () => {
  const sun = sunAt(25, 120);

  test('a stop more of exposure doubles the light of a pixel', () => {
    const [dark, bright] = [14, 13].map((cameraEv) =>
      lightOf(predictedFrame(scene('bright-overcast', sun, { cameraEv }))),
    );
    // A level of 255 is 1 % here.
    expect((bright ?? NaN) / (dark ?? NaN)).toBeGreaterThan(1.95);
    expect((bright ?? NaN) / (dark ?? NaN)).toBeLessThan(2.05);
  });

  test('what is more than 2.47 stops over the card clips, and no further', () => {
    expect(middle(predictedFrame(scene('bright-overcast', sun, { cameraEv: 4 })))).toEqual([
      255, 255, 255,
    ]);
  });

  test('a lower kelvin turns the sky blue, a higher one amber', () => {
    const [cold, warm] = [3200, 9000].map((kelvin) =>
      middle(
        predictedFrame(
          scene('bright-overcast', sun, { cameraEv: 13, whiteBalance: { kelvin, tint: 0 } }),
        ),
      ),
    );
    expect(cold?.[2]).toBeGreaterThan(cold?.[0] ?? NaN);
    expect(warm?.[0]).toBeGreaterThan(warm?.[2] ?? NaN);
  });

  test('a graduated filter takes its stops above its edge, half at it, none below', () => {
    const graduation = { stops: 2, fraction: 0.1 };
    const plain = predictedFrame(scene('bright-overcast', sun, { cameraEv: 13 }));
    const behind = predictedFrame(scene('bright-overcast', sun, { cameraEv: 13, graduation }));
    const taken = (y: number): number => Math.log2(lightOf(plain, y) / lightOf(behind, y));
    expect(Math.abs(taken(5) - 2)).toBeLessThan(0.05);
    expect(Math.abs(taken(80) - 1)).toBeLessThan(0.06);
    expect(Math.abs(taken(115))).toBeLessThan(0.02);
  });

  test('ground of 18 % light is sRGB 118 below the skyline', () => {
    const frame = predictedFrame(
      scene('clear', sun, {
        skyline: [{ azimuthDeg: 0, altitudeDeg: 20 }],
        ground: [0.18, 0.18, 0.18],
      }),
    );
    expect(middle(frame, 190)).toEqual([118, 118, 118]);
  });

  test('the sun itself is white where it stands over the skyline, and gone behind a hill', () => {
    const inFrame = sunAt(10, 300);
    const shown = (altitudeDeg: number): readonly number[] => {
      const asked = scene('clear', inFrame, {
        cameraEv: 18,
        skyline: [{ azimuthDeg: 0, altitudeDeg }],
      });
      const place = projection(framing).toPicture({ azimuthDeg: 300, altitudeDeg: 10 });
      const x = Math.floor((0.5 + (place?.xFraction ?? NaN)) * 300);
      const y = Math.floor((0.5 - (place?.yFraction ?? NaN)) * 200);
      return pixelAt(predictedFrame(asked), x, y);
    };
    expect(shown(2)).toEqual([255, 255, 255]);
    expect(shown(14)[0]).toBeLessThan(100);
  });

  test('a figure’s lit and unlit halves have the light they are given', () => {
    const frame = predictedFrame(
      scene('heavy-overcast', sun, {
        cameraEv: 16,
        framing: { ...framing, tiltDeg: 0, focalLengthMm: 50 },
        cameraHeightM: 1.65,
        figures: [
          {
            rightM: 0,
            awayM: 3,
            faceHeightM: 1.65,
            pose: 'standing',
            litRight: true,
            litSkin: [0.18, 0.18, 0.18],
            darkSkin: [0.02, 0.02, 0.02],
            litCloth: [0.1, 0.1, 0.1],
            darkCloth: [0.01, 0.01, 0.01],
            leftEdge: null,
            rightEdge: [0.6, 0.6, 0.6],
          },
        ],
      }),
    );
    const at = (x: number, y: number): number => frame.rgba[4 * (y * 300 + x)] ?? NaN;
    expect(at(154, 100)).toBe(118);
    // 255 · (1.055 · 0.02^(1/2.4) − 0.055) = 38.7.
    expect(at(145, 100)).toBe(39);
  });
});
