import { describe, expect, test } from 'vitest';

import { SHOOT } from '../../../src/core/plan/shoot.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { applyEdit } from '../../../src/core/plan/history.ts';
import { addPhoto } from '../../../src/core/plan/photo-edits.ts';
import { makesReading, photoEntry } from '../../../src/exchange/photo/photo-entry.ts';
import type { PhotoFacts } from '../../../src/exchange/photo/photo-facts.ts';

const facts: PhotoFacts = {
  name: 'scout-01.jpg',
  kind: 'JPEG',
  widthPx: 6000,
  heightPx: 4000,
  clockTime: '2027-05-14T19:30:05',
  takenAtMs: null,
  latitudeDeg: 45.65,
  longitudeDeg: 13.75,
  elevationM: 3,
  bearingDeg: 300,
  bearingNorth: 'true',
  focalLengthMm: 24,
  focalLength35Mm: 35,
  fNumber: 8,
  shutterS: 1 / 250,
  iso: 100,
  compensationStops: 0,
  flashFired: false,
  orientation: 1,
  colourProfile: 'sRGB',
  notes: [],
};
const PICTURE = { contentHash: 'a'.repeat(64), widthPx: 1600, heightPx: 1067 };

describe('a photo as its spot keeps it', () => {
  test('holds what the camera wrote, its time on the clocks of the spot', () => {
    const entry = photoEntry(facts, PICTURE, 'Europe/Rome');
    expect(entry).toEqual({
      name: 'scout-01.jpg',
      ...PICTURE,
      takenAtMs: Date.UTC(2027, 4, 14, 17, 30, 5),
      latitudeDeg: 45.65,
      longitudeDeg: 13.75,
      bearingDeg: 300,
      focalLengthMm: 24,
      focalLength35Mm: 35,
      fNumber: 8,
      shutterS: 1 / 250,
      iso: 100,
      note: '',
    });
    const { document } = applyEdit(demoShoot(), addPhoto('pier', 'p', { ...entry, order: 'n' }));
    expect(SHOOT.safeParse(document).success).toBe(true);
  });

  test.each([
    [{ flashFired: true }, 'The flash fired: its exposure says little of the daylight.'],
    [{ compensationStops: 1 }, 'Exposed 1.0 over what the meter asked for.'],
    [{ compensationStops: -1 / 3 }, 'Exposed 0.3 under what the meter asked for.'],
    [{ compensationStops: null }, ''],
    [
      { notes: ['ISO: left out.'], flashFired: true },
      'ISO: left out.\nThe flash fired: its exposure says little of the daylight.',
    ],
  ])('%j is noted', (more, note) => {
    expect(photoEntry({ ...facts, ...more }, PICTURE, 'Europe/Rome').note).toBe(note);
  });

  test('it makes a reading where its exposure is whole and no flash fired', () => {
    expect(makesReading(facts)).toBe(true);
    for (const less of [{ flashFired: true }, { fNumber: null }, { shutterS: null }, { iso: null }])
      expect(makesReading({ ...facts, ...less })).toBe(false);
  });
});
