import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';

import { holdLines, sunLines } from '../../../../src/app/screens/scout/light-sentences.ts';
import { sunDay } from '../../../../src/app/screens/scout/sun-day.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import type { Spot } from '../../../../src/core/plan/shoot.ts';
import type { SetupColumn } from '../../../../src/core/plan/setup-column.ts';
import { VERDICTS } from '../../../../src/core/plan/verdicts.ts';
import { emptyLightColumn } from '../../../../src/core/spot/light-column.ts';

const demo = demoShoot();
const spotOf = (id: string): Spot => {
  const spot = demo.spots[id];
  if (spot === undefined) throw new Error(`the demo has no spot ${id}`);
  return spot;
};
const pier = spotOf('pier');

const valueOf = (spot: Spot, date: string, figure: string): string => {
  const lines = sunLines(sunDay(spot, date), spot.zone, 'clear');
  const found = lines.find((line) => line.figure === figure);
  return `${found?.value}${found?.note ? ` | ${found.note}` : ''}`;
};

/** Apparent altitude and azimuth of the sun by another library. */
const sunByAnotherLibrary = (
  ms: number,
  spot: Spot,
): { readonly altitude: number; readonly azimuth: number } => {
  const observer = new Observer(spot.latitudeDeg, spot.longitudeDeg, spot.elevationM);
  const { ra, dec } = Equator(Body.Sun, new Date(ms), observer, true, true);
  return Horizon(new Date(ms), observer, ra, dec, 'normal');
};

const beamNote = (condition: 'bright-overcast' | 'broken-cloud'): string | null | undefined =>
  sunLines(sunDay(pier, demo.date), pier.zone, condition).find(
    ({ figure }) => figure === 'sun-leaves',
  )?.note;

const at = (clock: string): number => Date.parse(`2027-05-14T${clock}+02:00`);

describe('light on a day at the pier head of the demo, 14 May 2027', () => {
  test('the sun clears the hill to the east where another library sees it at the hill’s height', () => {
    const first = sunDay(pier, demo.date).windows.directSun[0];
    const { altitude, azimuth } = sunByAnotherLibrary(first?.fromMs ?? NaN, pier);
    // The skyline falls from 9° at azimuth 70° to 7° at 95°, straight between.
    const hillDeg = 9 - (2 * (azimuth - 70)) / 25;
    // 0.03°: refraction of two handbooks, and suncalc's 0.014°.
    expect(Math.abs(altitude - hillDeg)).toBeLessThan(0.03);
    expect(azimuth).toBeGreaterThan(70);
    expect(valueOf(pier, demo.date, 'first-sun')).toMatch(/ \| behind the skyline until then$/);
  });

  test('the sun enters the frame on the edge of the picture, another library says', () => {
    const entry = sunDay(pier, demo.date).windows.sunInFrame[0]?.fromMs ?? NaN;
    const { altitude, azimuth } = sunByAnotherLibrary(entry, pier);
    // Camera 300°, 35 mm on 36 × 24, tilt +6°: picture coordinates by plane trigonometry.
    const rad = Math.PI / 180;
    const east = Math.cos(altitude * rad) * Math.sin((azimuth - 300) * rad);
    const ahead = Math.cos(altitude * rad) * Math.cos((azimuth - 300) * rad);
    const up = Math.sin(altitude * rad);
    const depth = ahead * Math.cos(6 * rad) + up * Math.sin(6 * rad);
    const x = (35 * east) / depth / 36;
    const y = (35 * (up * Math.cos(6 * rad) - ahead * Math.sin(6 * rad))) / depth / 24;
    // 0.002 of a side is 0.1°.
    expect(Math.max(Math.abs(x), Math.abs(y))).toBeCloseTo(0.5, 2);
    expect(valueOf(pier, demo.date, 'sun-in-frame')).toMatch(
      /^\d\d:\d\d to \d\d:\d\d \| clips at any hold; flare and veil are not modelled$/,
    );
  });

  test('a camera to the south never has the sun of the evening in its frame', () => {
    const south = { ...pier, framing: { ...pier.framing, bearingDeg: 180, tiltDeg: 0 } };
    expect(valueOf(south, demo.date, 'sun-in-frame')).toBe('never on this date');
  });

  test('an overcast says that no beam comes, broken cloud that it comes between clouds', () => {
    expect(beamNote('bright-overcast')).toBe('where the sun stands; no beam under bright overcast');
    expect(beamNote('broken-cloud')).toBe('in the minutes when no cloud hides it');
  });
});

describe('days without sunrise or sunset are told in words', () => {
  const tromso = {
    ...pier,
    latitudeDeg: 69.65,
    longitudeDeg: 18.96,
    zone: 'Europe/Oslo',
    skyline: {},
  };

  test('midsummer at 69.65° N: the sun stays up', () => {
    expect(valueOf(tromso, '2027-06-21', 'sunset')).toBe('none: the sun stays up');
    expect(valueOf(tromso, '2027-06-21', 'sunrise')).toBe('none: it is up already');
    expect(valueOf(tromso, '2027-06-21', 'first-sun')).toBe('from the start of the date');
    expect(valueOf(tromso, '2027-06-21', 'sun-leaves')).toBe('not before the date ends');
  });

  test('midwinter at 69.65° N: the sun stays down', () => {
    expect(valueOf(tromso, '2027-12-21', 'sunrise')).toBe('none: the sun stays down');
    expect(valueOf(tromso, '2027-12-21', 'first-sun')).toBe(
      'no direct sun reaches the spot on this date',
    );
    expect(valueOf(tromso, '2027-12-21', 'sun-in-frame')).toBe('never on this date');
  });
});

describe('when the lights hold the sky', () => {
  const numbers = new Float64Array(2).fill(NaN);
  const column: SetupColumn = {
    ...emptyLightColumn(Float64Array.of(at('20:00:00'), at('20:10:00'))),
    referenceEv: numbers,
    reachEv: numbers,
    inHandStops: numbers,
    shortByStops: Float64Array.of(0.9, 0.4),
    verdict: new Uint8Array(2).fill(VERDICTS.indexOf('sky-above-reach')),
    limitingRole: new Uint8Array(2),
  };

  test('the first whole minute, the last, and what ends it', () => {
    const lines = holdLines(
      'Four on the pier head',
      column,
      [{ fromMs: at('19:45:20'), toMs: at('21:06:40'), endedBy: 'too-dark' }],
      'Europe/Rome',
    );
    expect(lines.map(({ value }) => value)).toEqual(['19:46 to 21:06', '21:06']);
    expect(lines[1]?.note).toBe(
      'then too dark for slowest shutter, widest aperture and highest ISO',
    );
  });

  test('none is a sentence with the closest minute and by how much it is short', () => {
    const lines = holdLines('Four on the pier head', column, [], 'Europe/Rome');
    expect(lines[0]?.value).toBe('at no minute of this date');
    expect(lines[0]?.note).toBe(
      'Four on the pier head; closest at 20:10, short by 0.4: the sky is brighter than the lights reach',
    );
    expect(lines[1]?.value).toBe('there is none');
  });
});
