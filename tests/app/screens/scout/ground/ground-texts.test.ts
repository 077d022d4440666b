import { describe, expect, test } from 'vitest';

import { areaText } from '../../../../../src/app/screens/scout/ground/area-text.ts';
import { cornerText } from '../../../../../src/app/screens/scout/ground/corner-text.ts';
import {
  footprintsAddressFault,
  footprintsHost,
} from '../../../../../src/app/screens/scout/ground/footprints-address.ts';
import { freeName } from '../../../../../src/app/screens/scout/ground/obstacle-words.ts';
import { shadowNote } from '../../../../../src/app/screens/scout/ground/shadow-note.ts';
import { parseCoordinates } from '../../../../../src/core/place/coordinates-text.ts';
import { demoShoot } from '../../../../../src/core/plan/demo-shoot.ts';
import { defined } from '../../../../support/defined.ts';

const pier = defined(demoShoot().spots['pier']);
const at = Date.parse('2027-05-14T18:40:00+02:00');
const sun = (apparentAltitudeDeg: number) => ({ azimuthDeg: 280, apparentAltitudeDeg });

describe('what the map says of its shadows', () => {
  test('minute, level ground, the sun’s height, and that slopes are not in them', () => {
    expect(shadowNote(pier, sun(12.4), at)).toBe(
      'Shadows at 18:40 on level ground, sun at 12°. Slopes are not in them',
    );
    expect(shadowNote(pier, sun(3.66), at)).toContain('sun at 3.7°');
  });

  test('under 1° that they are cut short, with the sun down that there are none', () => {
    // cot 1° = 57.29
    expect(shadowNote(pier, sun(0.4), at)).toContain('57 times the height');
    expect(shadowNote(pier, sun(-0.1), at)).toBe(
      'No shadows at 18:40: the sun is down at Pier head',
    );
    expect(shadowNote(null, null, at)).toContain('without a spot');
  });
});

test('a corner is written as it can be read again, south and west too', () => {
  for (const corner of [
    [13.7571, 45.6503],
    [-13.7571, -45.6503],
    [-0.000_25, 0],
  ] as const) {
    const read = parseCoordinates(cornerText(corner));
    expect(read.ok && read.value.longitudeDeg).toBeCloseTo(corner[0], 6);
    expect(read.ok && read.value.latitudeDeg).toBeCloseTo(corner[1], 6);
  }
});

test('an area in square metres, from two hectares on in hectares', () => {
  expect(areaText(843.4)).toBe('843 m²');
  expect(areaText(12_345)).toBe('12,300 m²');
  expect(areaText(42_499)).toBe('4.25 ha');
});

test('a second wall gets a number, a third the next', () => {
  expect(freeName('Wall', [])).toBe('Wall');
  expect(freeName('Wall', ['Wall'])).toBe('Wall 2');
  expect(freeName('Wall', ['Wall', 'Wall 2', 'Building'])).toBe('Wall 3');
});

describe('the address of a query interface', () => {
  test('is https, or on this device', () => {
    expect(footprintsAddressFault('https://maps.example/api/interpreter')).toBeNull();
    expect(footprintsHost('http://127.0.0.1:8080/api')).toBe('127.0.0.1:8080');
    expect(footprintsAddressFault('')).toBeNull();
    expect(footprintsHost('')).toBeNull();
  });

  test.each(['http://maps.example/api', 'maps.example', 'javascript:alert(1)'])(
    'is not %s',
    (text) => {
      expect(footprintsAddressFault(text)).toContain('expected the https address');
    },
  );
});
