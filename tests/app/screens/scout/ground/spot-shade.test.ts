import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { shadeText } from '../../../../../src/app/screens/scout/ground/SpotInShadow.tsx';
import {
  mayHide,
  nearStanding,
} from '../../../../../src/app/screens/scout/ground/near-standing.ts';
import { spotShade } from '../../../../../src/app/screens/scout/ground/spot-shade.ts';
import type { Standing } from '../../../../../src/app/state/standing.ts';
import { isInShadow } from '../../../../../src/core/skyline/in-shadow.ts';
import type { Corner, Obstacle } from '../../../../../src/core/skyline/obstacle.ts';

const PLACE = { latitudeDeg: 45.6503, longitudeDeg: 13.7621, elevationM: 3 };
const DATE = '2027-05-14';
const RAD = Math.PI / 180;
const MS_PER_MIN = 60_000;

/** Metres a degree, by the radius of the parallel and of the meridian of WGS 84 at 45.65° N. */
const NORTH_M = 111_143;
const EAST_M = 77_943;

const at = (eastM: number, northM: number): Corner => [
  PLACE.longitudeDeg + eastM / EAST_M,
  PLACE.latitudeDeg + northM / NORTH_M,
];

const standing = (name: string, changes: Partial<Obstacle>): Standing => ({
  key: name,
  name,
  from: { kind: 'own', id: name },
  obstacle: {
    kind: 'wall',
    closed: false,
    outline: [at(100, -5000), at(100, 5000)],
    heightM: 20,
    crownBaseM: 0,
    passesInLeaf: 0,
    passesBare: 0,
    footElevationM: null,
    ...changes,
  },
});

/** A long wall 100 m to the east, along the meridian. */
const eastWall = standing('Warehouse north', {});
const westWall = standing('Quay shed', { outline: [at(-100, -5000), at(-100, 5000)] });

const instant = (clock: string): number => Date.parse(`${DATE}T${clock}:00+02:00`);
const ask = (clock: string, some: readonly Standing[]) =>
  spotShade({
    place: PLACE,
    minuteMs: instant(clock),
    date: DATE,
    near: nearStanding(some, PLACE),
  });

/**
 * The minute at which the sun, by another library, rises over the wall: tan h = 20 sin(azimuth)/100
 * for a long wall along the meridian.
 */
function sunOverWall(fromClock: string): number {
  const observer = new Observer(PLACE.latitudeDeg, PLACE.longitudeDeg, 0);
  for (let ms = instant(fromClock); ; ms += MS_PER_MIN) {
    const { ra, dec } = Equator(Body.Sun, new Date(ms), observer, true, true);
    const { altitude, azimuth } = Horizon(new Date(ms), observer, ra, dec, 'normal');
    if (Math.tan(altitude * RAD) * 100 > 20 * Math.sin(azimuth * RAD)) return ms;
  }
}

describe('whose shadow a spot lies in, and until when', () => {
  test('a long wall in the east: until the sun stands over it, to the minute', () => {
    const shade = ask('06:30', [eastWall]);
    expect(shade).toMatchObject({ kind: 'in-shadow', of: 'Warehouse north' });
    const untilMs = shade.kind === 'in-shadow' ? (shade.untilMs ?? NaN) : NaN;
    // A minute for the steps of both.
    expect(Math.abs(untilMs - sunOverWall('06:00'))).toBeLessThanOrEqual(MS_PER_MIN);
  });

  test('in the sun it names the shadow that comes next', () => {
    const shade = ask('12:00', [eastWall, westWall]);
    expect(shade).toMatchObject({ kind: 'in-sun', next: { of: 'Quay shed' } });
  });

  test('what keeps the sun until it sets has no end before', () => {
    expect(ask('20:00', [westWall])).toEqual({
      kind: 'in-shadow',
      of: 'Quay shed',
      untilMs: null,
    });
  });

  test('nothing stands there, or the sun is down', () => {
    expect(ask('12:00', [])).toEqual({ kind: 'in-sun', next: null });
    expect(ask('23:30', [eastWall])).toEqual({ kind: 'sun-down' });
  });

  test('open crowns take no sun away, dense ones do', () => {
    const trees = { kind: 'trees', crownBaseM: 0 } as const;
    const open = standing('Bare row', { ...trees, passesInLeaf: 0.6 });
    const dense = standing('Row in leaf', { ...trees, passesInLeaf: 0.2 });
    expect(ask('06:30', [open])).toEqual({ kind: 'in-sun', next: null });
    expect(ask('06:30', [open, dense])).toMatchObject({ kind: 'in-shadow', of: 'Row in leaf' });
  });

  test('a wall whose foot lies 30 m below the spot hides nothing of its sun', () => {
    expect(ask('06:30', [standing('Low', { footElevationM: -27 })])).toEqual({
      kind: 'in-sun',
      next: null,
    });
  });
});

test('it is said in the clock of the spot', () => {
  const spot = { name: 'Pier head', zone: 'Europe/Rome' };
  const minuteMs = instant('06:30');
  const say = (shade: Parameters<typeof shadeText>[0]): string => shadeText(shade, spot, minuteMs);
  expect(say({ kind: 'in-shadow', of: 'Warehouse north', untilMs: instant('09:12') })).toBe(
    'Pier head is in the shadow of Warehouse north until 09:12.',
  );
  expect(say({ kind: 'in-shadow', of: 'Quay shed', untilMs: null })).toContain(
    'until the sun sets',
  );
  expect(say({ kind: 'in-sun', next: { of: 'Quay shed', fromMs: instant('18:50') } })).toContain(
    'that of Quay shed comes at 18:50',
  );
  expect(say({ kind: 'in-sun', next: null })).toContain('to sunset');
  expect(say({ kind: 'sun-down' })).toContain('down at 06:30');
});

test('what is passed over quickly never hides the sun: against the ray to it, any outline, any sun', () => {
  const metres = fc.double({ min: -400, max: 400, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(metres, metres), { minLength: 2, maxLength: 5 }),
      fc.double({ min: 1, max: 80, noNaN: true }),
      fc.double({ min: 0, max: 359.9, noNaN: true }),
      fc.double({ min: 0.3, max: 85, noNaN: true }),
      fc.boolean(),
      (corners, heightM, azimuthDeg, apparentAltitudeDeg, closed) => {
        const one = standing('any', {
          kind: 'building',
          closed,
          outline: corners.map(([eastM, northM]) => at(eastM, northM)),
          heightM,
        });
        const sun = { azimuthDeg, apparentAltitudeDeg };
        const shade = isInShadow({
          point: PLACE,
          aboveGroundM: 0,
          sun,
          date: DATE,
          obstacles: [one.obstacle],
        });
        if (shade?.blocked === true)
          expect(nearStanding([one], PLACE).some((near) => mayHide(near, sun))).toBe(true);
      },
    ),
    { numRuns: 3000 },
  );
});
