import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  exactFNumber,
  fNumberFromStops,
  formatAperture,
  formatMeterAperture,
  stopsFromFNumber,
} from '../../../src/core/exposure/aperture-scale.ts';
import { dialScale, isWithinDial } from '../../../src/core/exposure/dial-scale.ts';
import { formatIso, isoFromStops } from '../../../src/core/exposure/iso-scale.ts';
import { formatShutter, shutterFromStops } from '../../../src/core/exposure/shutter-scale.ts';
import { largestError } from '../../support/largest-error.ts';

const APERTURES =
  '1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32 36 40 45 51 57 64';
const SHUTTERS =
  '30 25 20 15 13 10 8 6 5 4 3.2 2.5 2 1.6 1.3 1 0.8 0.6 0.5 0.4 0.3 1/4 1/5 1/6 1/8 1/10 1/13 1/15 1/20 1/25 1/30 1/40 1/50 1/60 1/80 1/100 1/125 1/160 1/200 1/250 1/320 1/400 1/500 1/640 1/800 1/1000 1/1250 1/1600 1/2000 1/2500 1/3200 1/4000 1/5000 1/6400 1/8000';
const ISOS =
  '50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400 8000 10000 12800 16000 20000 25600';

const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

describe('the nominal series of apertures, shutters and ISO', () => {
  const labelError = largestError('nominal against exact dial value', 'stop');

  test('f-numbers in third stops from f/1, the largest label error that of f/1.2', () => {
    // The label says f/1.2, the exact value is 2^(2/6): 0.141 stop.
    APERTURES.split(' ').forEach((label, click) => {
      expect(formatAperture(fNumberFromStops(click / 3))).toBe(`f/${label}`);
      expect(labelError(stopsFromFNumber(Number(label)) - click / 3)).toBeLessThan(0.1407);
    });
  });

  test('f-numbers in half stops', () => {
    const labels = '1 1.2 1.4 1.7 2 2.4 2.8 3.3 4 4.8 5.6 6.7 8 9.5 11 13 16 19 22';
    labels.split(' ').forEach((label, click) => {
      expect(formatAperture(fNumberFromStops(click / 2), 'half')).toBe(`f/${label}`);
    });
  });

  test('shutters in third stops from 30 s, the largest label error that of 30, 15, 1/15, 1/30, 1/60', () => {
    SHUTTERS.split(' ').forEach((label, click) => {
      const stops = 5 - click / 3;
      const [over, under = '1'] = label.split('/');
      expect(formatShutter(shutterFromStops(stops))).toBe(
        label.includes('/') ? label : `${label} s`,
      );
      expect(labelError(Math.log2(Number(over) / Number(under)) - stops)).toBeLessThan(0.0932);
    });
  });

  test('ISO in third stops from ISO 50', () => {
    ISOS.split(' ').forEach((label, click) => {
      expect(formatIso(isoFromStops(click / 3 - 1))).toBe(`ISO ${label}`);
      expect(labelError(Math.log2(Number(label) / 100) - (click / 3 - 1))).toBeLessThan(0.024);
    });
  });

  test('a value given by its name keeps its name', () => {
    for (const label of APERTURES.split(' '))
      expect(formatAperture(Number(label))).toBe(`f/${label}`);
    expect([1 / 250, 1 / 60, 1 / 15, 0.5, 30].map((time) => formatShutter(time))).toEqual([
      '1/250',
      '1/60',
      '1/15',
      '0.5 s',
      '30 s',
    ]);
    expect(formatShutter(1 / 180, 'half')).toBe('1/180');
  });

  test('a meter shows whole stops and tenths', () => {
    // f/8 and three tenths: 8 · 2^0.15.
    expect(formatMeterAperture(8 * 2 ** 0.15)).toBe('f/8 + 0.3');
    expect(formatMeterAperture(11.3137)).toBe('f/11');
    expect(formatMeterAperture(8 * 2 ** 0.49)).toBe('f/11');
  });
});

describe('a dial offers its stated ends and the exact series between them', () => {
  test('f/2.8 to f/4 in thirds, as a lens is engraved', () => {
    const stops = dialScale({
      fromStops: stopsFromFNumber(2.8),
      toStops: stopsFromFNumber(4),
      stepStops: 1 / 3,
    });
    expect(stops.map((value) => formatAperture(fNumberFromStops(value)))).toEqual([
      'f/2.8',
      'f/3.2',
      'f/3.5',
      'f/4',
    ]);
    expect(fNumberFromStops(stops[0] ?? 0)).toBeCloseTo(2.8, 12);
  });

  test('no value lies outside its ends, none is a neighbour’s other name', () => {
    fc.assert(
      fc.property(
        number(-10, 10),
        number(0, 12),
        fc.constantFrom(1 / 3, 1 / 2),
        (fromStops, width, stepStops) => {
          const toStops = fromStops + width;
          const values = dialScale({ fromStops, toStops, stepStops });
          expect(values[0]).toBe(fromStops);
          expect(Math.max(...values)).toBeLessThanOrEqual(toStops);
          values.slice(1).forEach((value, index) => {
            const gap = value - (values[index] ?? 0);
            expect(gap).toBeGreaterThan(0);
            expect(gap).toBeLessThanOrEqual(stepStops + 0.3 + 1e-9);
          });
        },
      ),
    );
  });

  test('a pin by nominal name counts as the end it names', () => {
    const lens = { fromStops: stopsFromFNumber(2.8), toStops: stopsFromFNumber(22) };
    expect(isWithinDial(stopsFromFNumber(22.627), lens)).toBe(true);
    expect(isWithinDial(stopsFromFNumber(25.4), lens)).toBe(false);
    expect(isWithinDial(stopsFromFNumber(2.5), lens)).toBe(false);
  });
});

test('an engraved f-number is read as the exact value it stands for, any other as it is', () => {
  // Exact series N = 2^(i/6), names as engraved.
  expect(exactFNumber(22)).toBeCloseTo(22.6274, 4);
  expect(exactFNumber(5.6)).toBeCloseTo(5.65685, 4);
  expect(exactFNumber(21.3)).toBe(21.3);
});
