import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { bounce, type BouncePath } from '../../../src/core/strobe/bounce.ts';

const straight: BouncePath = {
  headToSurfaceM: 0.2,
  surfaceToSubjectM: 4,
  incidenceDeg: 0,
  exitDeg: 0,
  beamDeg: 60,
  reflectance: 0.8,
};

/** Brute force over the wall itself: squares of 1/400 of its side, each lit by the inverse square law. */
function bruteForceStops(path: BouncePath): number {
  const radians = Math.PI / 180;
  const halfBeam = (path.beamDeg / 2) * radians;
  const [inAngle, outAngle] = [path.incidenceDeg * radians, path.exitDeg * radians];
  const head = [-path.headToSurfaceM * Math.sin(inAngle), path.headToSurfaceM * Math.cos(inAngle)];
  const subject = [
    path.surfaceToSubjectM * Math.sin(outAngle),
    path.surfaceToSubjectM * Math.cos(outAngle),
  ];
  const [headX = 0, headZ = 0] = head;
  const [subjectX = 0, subjectZ = 0] = subject;
  const axis = [Math.sin(inAngle), -Math.cos(inAngle)];
  const side = path.panelSideM ?? 40 * path.headToSurfaceM;
  const count = 1200;
  const step = side / count;
  let lux = 0;
  for (let row = 0; row < count; row += 1)
    for (let column = 0; column < count; column += 1) {
      const x = -side / 2 + (column + 0.5) * step;
      const y = -side / 2 + (row + 0.5) * step;
      const fromHead = [x - headX, y, -headZ];
      const length = Math.hypot(...fromHead);
      const cosAxis =
        ((fromHead[0] ?? 0) * (axis[0] ?? 0) + (fromHead[2] ?? 0) * (axis[1] ?? 0)) / length;
      if (cosAxis < Math.cos(halfBeam)) continue;
      const onWall = headZ / length / length ** 2;
      const luminance = (path.reflectance * onWall) / Math.PI;
      const toSubject = [subjectX - x, -y, subjectZ];
      const way = Math.hypot(...toSubject);
      const facing =
        ((toSubject[0] ?? 0) * subjectX + (toSubject[2] ?? 0) * subjectZ) /
        (way * path.surfaceToSubjectM);
      lux += (luminance * step * step * (subjectZ / way) * Math.max(0, facing)) / way ** 2;
    }
  return Math.log2(lux * path.surfaceToSubjectM ** 2);
}

describe('a head bounced off a wall', () => {
  // Worked by hand from the Lambertian patch, beam 60°: log2(ρ tan² 30°), printed to a tenth.
  test.each([
    [0.8, -1.9],
    [0.55, -2.5],
    [0.35, -3.1],
    [0.25, -3.6],
  ])('reflectance %d against direct from the wall: %d stops', (reflectance, stops) => {
    // The hand calculation takes the patch as evenly lit at the axis' value, tan² 30° = 0.333;
    // the light in a cone of 60° is 2(1 − cos 30°) = 0.268 of it: 0.32 stop less, 0.05 of rounding.
    const found = bounce({ ...straight, reflectance }).againstDirectStops;
    expect(Math.abs(found - (stops - 0.32))).toBeLessThan(0.06);
  });

  test('a small patch sends on the light of its cone: log2 of 2ρ(1 − cos β/2)', () =>
    fc.assert(
      fc.property(fc.double({ min: 5, max: 100, noNaN: true }), (beamDeg) => {
        const found = bounce({ ...straight, headToSurfaceM: 0.01, beamDeg }).againstDirectStops;
        const closed = Math.log2(2 * 0.8 * (1 - Math.cos((beamDeg * Math.PI) / 360)));
        expect(Math.abs(found - closed)).toBeLessThan(0.002);
      }),
    ));

  test.each([
    ['square on', {}],
    ['head far back', { headToSurfaceM: 1.5, surfaceToSubjectM: 2.5 }],
    ['aslant', { headToSurfaceM: 1.2, surfaceToSubjectM: 3, incidenceDeg: 35, exitDeg: 40 }],
    ['narrow beam', { headToSurfaceM: 2, beamDeg: 25, exitDeg: 20 }],
    [
      'a panel of one metre',
      { headToSurfaceM: 1.2, surfaceToSubjectM: 2, panelSideM: 1, beamDeg: 70 },
    ],
  ])('%s: equal rays and squares of the wall agree', (_, change) => {
    const path = { ...straight, ...change };
    // Half a percent of the light is what 1152 rays leave; 2 % where a panel cuts the beam.
    const within = path.panelSideM === undefined ? 0.03 : 0.1;
    expect(Math.abs(bounce(path).againstDirectStops - bruteForceStops(path))).toBeLessThan(within);
  });

  test('a grey wall of half the reflectance costs one stop', () =>
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 0.9, noNaN: true }), (reflectance) => {
        const [bright, dark] = [reflectance, reflectance / 2].map(
          (share) => bounce({ ...straight, reflectance: share }).againstDirectStops,
        );
        expect((bright ?? NaN) - (dark ?? NaN)).toBeCloseTo(1, 9);
      }),
    ));

  test('no wall gives back more than it got, however close', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 6, noNaN: true }),
        fc.double({ min: 0.5, max: 10, noNaN: true }),
        fc.double({ min: 10, max: 120, noNaN: true }),
        (headToSurfaceM, surfaceToSubjectM, beamDeg) => {
          const found = bounce({
            ...straight,
            headToSurfaceM,
            surfaceToSubjectM,
            beamDeg,
            reflectance: 1,
          });
          expect(found.againstDirectStops).toBeLessThan(0);
        },
      ),
    ));

  test('a smaller panel catches less and sends less', () => {
    const [whole, part] = [undefined, 0.5].map((panelSideM) =>
      bounce({ ...straight, headToSurfaceM: 1, panelSideM }),
    );
    expect(whole?.caughtShare).toBe(1);
    expect(part?.caughtShare).toBeLessThan(0.5);
    expect(part?.againstDirectStops).toBeLessThan(whole?.againstDirectStops ?? NaN);
  });

  test('the patch of a 60° beam from 1.5 m is 1.73 m wide: 2 · 1.5 · tan 30°', () => {
    expect(bounce({ ...straight, headToSurfaceM: 1.5 }).patchDiameterM).toBeCloseTo(1.732, 3);
  });
});
