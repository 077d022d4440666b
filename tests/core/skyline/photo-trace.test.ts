import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { cylindricalPhoto } from '../../../src/core/skyline/cylindrical-photo.ts';
import { photoRun } from '../../../src/core/skyline/photo-run.ts';
import type { KnownPoint, PhotoSight, PixelPoint } from '../../../src/core/skyline/photo-sight.ts';
import { rectilinearPhoto } from '../../../src/core/skyline/rectilinear-photo.ts';
import type { Direction } from '../../../src/core/units/direction.ts';
import { largestError } from '../../support/largest-error.ts';

const RAD = Math.PI / 180;
const WIDTH_PX = 3000;
const HEIGHT_PX = 2000;

type Camera = {
  readonly bearingDeg: number;
  readonly tiltDeg: number;
  readonly rollDeg: number;
  readonly focalPx: number;
};

/** Forward projection by turning the world about three axes; null behind the camera. */
const shot = (camera: Camera, { azimuthDeg, altitudeDeg }: Direction): PixelPoint | null => {
  const turn = (azimuthDeg - camera.bearingDeg) * RAD;
  const height = altitudeDeg * RAD;
  // Right, ahead, up of a level camera.
  const level = [
    Math.cos(height) * Math.sin(turn),
    Math.cos(height) * Math.cos(turn),
    Math.sin(height),
  ] as const;
  const tilt = camera.tiltDeg * RAD;
  const ahead = level[1] * Math.cos(tilt) + level[2] * Math.sin(tilt);
  const above = level[2] * Math.cos(tilt) - level[1] * Math.sin(tilt);
  if (ahead <= 0) return null;
  // A camera rolled clockwise shows the scene turned the other way.
  const roll = camera.rollDeg * RAD;
  const right = level[0] * Math.cos(roll) - above * Math.sin(roll);
  const up = level[0] * Math.sin(roll) + above * Math.cos(roll);
  return {
    xPx: WIDTH_PX / 2 + (camera.focalPx * right) / ahead,
    yPx: HEIGHT_PX / 2 - (camera.focalPx * up) / ahead,
  };
};

const known = (camera: Camera, direction: Direction): KnownPoint => {
  const pixel = shot(camera, direction);
  if (pixel === null) throw new Error('behind the camera');
  return { ...pixel, ...direction };
};

const apartDeg = (one: Direction, other: Direction): number => {
  const vector = ({ azimuthDeg, altitudeDeg }: Direction): readonly number[] => [
    Math.cos(altitudeDeg * RAD) * Math.sin(azimuthDeg * RAD),
    Math.cos(altitudeDeg * RAD) * Math.cos(azimuthDeg * RAD),
    Math.sin(altitudeDeg * RAD),
  ];
  const [a, b] = [vector(one), vector(other)];
  return (2 * Math.asin(Math.hypot(...a.map((part, at) => part - (b[at] ?? NaN))) / 2)) / RAD;
};

const solved = (
  model: typeof rectilinearPhoto,
  marks: readonly [KnownPoint, KnownPoint],
): PhotoSight => {
  const read = model({ widthPx: WIDTH_PX, heightPx: HEIGHT_PX, known: marks });
  if (!read.ok) throw new Error(`no model: ${JSON.stringify(read.problem)}`);
  return read.value;
};

const between = (from: number, to: number): fc.Arbitrary<number> =>
  fc.double({ min: from, max: to, noNaN: true });

/** 180° across 3000 px: the radius is 3000/π, the horizon at 1200. */
const painted = ({ azimuthDeg, altitudeDeg }: Direction): KnownPoint => ({
  xPx: ((azimuthDeg - 250 + 360) % 360) * (WIDTH_PX / 180),
  yPx: 1200 - (WIDTH_PX / Math.PI) * Math.tan(altitudeDeg * RAD),
  azimuthDeg,
  altitudeDeg,
});

/** A level eave 10 m up and 20 m ahead: tan altitude = (10/20)·cos(azimuth). */
const eave = (azimuthDeg: number): Direction => ({
  azimuthDeg,
  altitudeDeg: Math.atan(0.5 * Math.cos(azimuthDeg * RAD)) / RAD,
});

const error = largestError('direction off a photo with two known points', '°');

describe('a photo of straight lines', () => {
  const camera: Camera = { bearingDeg: 350, tiltDeg: 4, rollDeg: 1.5, focalPx: 2500 };
  const marks = [
    known(camera, { azimuthDeg: 330, altitudeDeg: 1 }),
    known(camera, { azimuthDeg: 8, altitudeDeg: 6 }),
  ] as const;

  test('bearing, tilt, roll and field are those of the camera that took it', () => {
    const sight = solved(rectilinearPhoto, marks);
    expect(sight.middle.azimuthDeg).toBeCloseTo(350, 6);
    expect(sight.middle.altitudeDeg).toBeCloseTo(4, 6);
    expect(sight.rollDeg).toBeCloseTo(1.5, 6);
    // 2·atan(1500/2500)
    expect(sight.horizontalFieldDeg).toBeCloseTo(61.9275, 3);
    expect(sight.missDeg).toBeLessThan(1e-5);
    // The marks are 38.1° apart.
    expect(sight.stretchPerDegree).toBeCloseTo(1 / 38.1, 3);
  });

  test('directions of other places are those that project there, whatever camera took it', () => {
    fc.assert(
      fc.property(
        fc.record({
          bearingDeg: between(0, 359),
          tiltDeg: between(-15, 25),
          rollDeg: between(-8, 8),
          focalPx: between(1500, 9000),
        }),
        between(-0.45, -0.1),
        between(0.1, 0.45),
        between(-0.4, 0.4),
        between(-0.4, 0.4),
        (taken, leftShare, rightShare, lowShare, highShare) => {
          const fieldDeg = (2 * Math.atan(WIDTH_PX / (2 * taken.focalPx))) / RAD;
          const seen = (x: number, y: number): Direction => ({
            azimuthDeg: (taken.bearingDeg + x * fieldDeg + 360) % 360,
            altitudeDeg: taken.tiltDeg + (y * fieldDeg) / 2,
          });
          const first = seen(leftShare, lowShare);
          const second = seen(rightShare, highShare);
          fc.pre(apartDeg(first, second) > 3);
          const pixels = [known(taken, first), known(taken, second)] as const;
          fc.pre(
            Math.hypot(pixels[1].xPx - pixels[0].xPx, pixels[1].yPx - pixels[0].yPx) >
              0.1 * WIDTH_PX,
          );
          const sight = solved(rectilinearPhoto, pixels);
          for (const target of [seen(0, 0.2), seen(-0.4, -0.3), seen(0.4, 0.4)])
            expect(error(apartDeg(sight.directionAt(known(taken, target)), target))).toBeLessThan(
              1e-4,
            );
        },
      ),
    );
  });

  test('marks 60 px apart in 3000, or 1° apart, do not fix the scale', () => {
    const near = known(camera, { azimuthDeg: 331, altitudeDeg: 1 });
    const read = rectilinearPhoto({
      widthPx: WIDTH_PX,
      heightPx: HEIGHT_PX,
      known: [marks[0], near],
    });
    expect(read.ok ? '' : read.problem.kind).toBe('too-close');
    const far = { ...marks[1], azimuthDeg: 331, altitudeDeg: 1 };
    const same = rectilinearPhoto({
      widthPx: WIDTH_PX,
      heightPx: HEIGHT_PX,
      known: [marks[0], far],
    });
    expect(same.ok ? '' : same.problem.kind).toBe('too-close');
  });

  test('no lens of straight lines shows two bearings 170° apart at a third of the width', () => {
    const read = rectilinearPhoto({
      widthPx: WIDTH_PX,
      heightPx: HEIGHT_PX,
      known: [
        { xPx: 1000, yPx: 1000, azimuthDeg: 0, altitudeDeg: 0 },
        { xPx: 2000, yPx: 1000, azimuthDeg: 170, altitudeDeg: 0 },
      ],
    });
    expect(read.ok ? '' : read.problem.kind).toBe('no-such-picture');
  });
});

describe('a panorama on a cylinder', () => {
  test('its scale, bearing and horizon come back, across north too', () => {
    const sight = solved(cylindricalPhoto, [
      painted({ azimuthDeg: 30, altitudeDeg: 12 }),
      painted({ azimuthDeg: 265, altitudeDeg: -1 }),
    ]);
    expect(sight.horizontalFieldDeg).toBeCloseTo(180, 9);
    expect(sight.middle.azimuthDeg).toBeCloseTo(340, 9);
    expect(sight.missDeg).toBeLessThan(1e-9);
    for (const target of [
      { azimuthDeg: 255, altitudeDeg: 3 },
      { azimuthDeg: 359, altitudeDeg: 30 },
      { azimuthDeg: 60, altitudeDeg: 0 },
    ])
      expect(apartDeg(sight.directionAt(painted(target)), target)).toBeLessThan(1e-6);
  });

  test('two altitudes that do not agree leave half their difference as the miss', () => {
    const second = painted({ azimuthDeg: 30, altitudeDeg: 1 });
    const sight = solved(cylindricalPhoto, [
      painted({ azimuthDeg: 265, altitudeDeg: 0 }),
      { ...second, altitudeDeg: 2 },
    ]);
    // Near the horizon tangent and angle agree to a thousandth.
    expect(sight.missDeg).toBeCloseTo(0.5, 2);
  });

  test('a picture of more than one round is refused', () => {
    const read = cylindricalPhoto({
      widthPx: WIDTH_PX,
      heightPx: HEIGHT_PX,
      known: [
        { xPx: 1000, yPx: 1000, azimuthDeg: 0, altitudeDeg: 0 },
        { xPx: 2000, yPx: 1000, azimuthDeg: 300, altitudeDeg: 0 },
      ],
    });
    expect(read.ok ? '' : read.problem.kind).toBe('no-such-picture');
  });
});

describe('a line drawn in the picture', () => {
  const camera: Camera = { bearingDeg: 0, tiltDeg: 10, rollDeg: 0, focalPx: 1500 };
  const sight = solved(rectilinearPhoto, [
    known(camera, { azimuthDeg: 340, altitudeDeg: 5 }),
    known(camera, { azimuthDeg: 25, altitudeDeg: 12 }),
  ]);

  test('a straight eave of 80°, drawn by its two ends, is bent as it stands in the sky', () => {
    const run = photoRun(sight, [known(camera, eave(40)), known(camera, eave(-40))]);
    expect(run[0]?.azimuthDeg).toBeCloseTo(-40, 4);
    expect(run.at(-1)?.azimuthDeg).toBeCloseTo(40, 4);
    expect(run.length).toBeGreaterThan(30);
    for (const point of run)
      expect(Math.abs(point.altitudeDeg - eave(point.azimuthDeg).altitudeDeg)).toBeLessThan(1e-4);
  });

  test('an upright edge keeps its upper end', () => {
    const edge = [2, 5, 9].map((altitudeDeg) => known(camera, { azimuthDeg: 10, altitudeDeg }));
    const run = photoRun(sight, edge);
    expect(Math.max(...run.map(({ altitudeDeg }) => altitudeDeg))).toBeCloseTo(9, 4);
    expect(run).toHaveLength(1);
  });

  test('nothing drawn is no run', () => expect(photoRun(sight, [])).toEqual([]));
});
