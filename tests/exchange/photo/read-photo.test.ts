import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { readPhoto } from '../../../src/exchange/photo/read-photo.ts';
import type { PhotoFacts } from '../../../src/exchange/photo/photo-facts.ts';
import {
  ascii,
  byte,
  fileOf,
  heicWith,
  jpegWith,
  jpegWithout,
  pngWith,
  rational,
  short,
  srational,
  tiffWith,
  webpWith,
  type CameraData,
  type Directory,
} from '../../support/exif-file.ts';

/** 14 May 2027 at 19:30:05, two hours ahead of UTC, from the end of a pier towards 300.12°. */
const SCOUTED = {
  main: { 0x0112: short(6) },
  exif: {
    0x829a: rational([1, 250]),
    0x829d: rational([80, 10]),
    0x8827: short(100),
    0x9003: ascii('2027:05:14 19:30:05'),
    0x9011: ascii('+02:00'),
    0x9204: srational([-1, 3]),
    0x9209: short(0x10),
    0x920a: rational([24, 1]),
    0xa001: short(1),
    0xa405: short(35),
  },
  gps: {
    0: byte(2, 3, 0, 0),
    1: ascii('N'),
    2: rational([45, 1], [39, 1], [108, 100]),
    3: ascii('E'),
    4: rational([13, 1], [45, 1], [2556, 100]),
    5: byte(0),
    6: rational([31, 10]),
    16: ascii('T'),
    17: rational([30012, 100]),
  },
} as const satisfies CameraData;

const factsOf = async (bytes: Uint8Array<ArrayBuffer>, name?: string): Promise<PhotoFacts> => {
  const read = await readPhoto(fileOf(bytes, name));
  if (!read.ok) throw new Error(read.problem);
  return read.value;
};

const withExif = (exif: Directory): Promise<PhotoFacts> => factsOf(jpegWith({ exif }));
const withGps = (gps: Directory): Promise<PhotoFacts> =>
  factsOf(jpegWith({ gps: { ...SCOUTED.gps, ...gps } }));

const refusalOf = async (file: Blob): Promise<string> => {
  const read = await readPhoto(file);
  if (read.ok) throw new Error('the file was taken');
  return read.problem;
};

/** A ten-thousandth of a degree is 11 m; the fixture writes hundredths of a second of arc, 3e-6°. */
const ARC_DIGITS = 6;

describe('a scouting photo says where, when, whither and how bright', () => {
  test.each([
    ['JPEG', jpegWith, 'big'],
    ['JPEG', jpegWith, 'little'],
    ['PNG', pngWith, 'big'],
    ['PNG', pngWith, 'little'],
    ['WebP', webpWith, 'big'],
    ['WebP', webpWith, 'little'],
    ['TIFF', tiffWith, 'big'],
    ['TIFF', tiffWith, 'little'],
    ['HEIC', heicWith, 'big'],
    ['HEIC', heicWith, 'little'],
  ] as const)('%s, %4$s byte first', async (kind, make, order) => {
    const facts = await factsOf(make(SCOUTED, order));
    expect(facts).toMatchObject({
      name: 'scout-01.jpg',
      kind,
      clockTime: '2027-05-14T19:30:05',
      // 19:30:05 at +02:00 is 17:30:05 UTC.
      takenAtMs: Date.UTC(2027, 4, 14, 17, 30, 5),
      elevationM: 3.1,
      bearingDeg: 300.12,
      bearingNorth: 'true',
      focalLengthMm: 24,
      focalLength35Mm: 35,
      fNumber: 8,
      shutterS: 1 / 250,
      iso: 100,
      flashFired: false,
      orientation: 6,
      colourProfile: 'sRGB',
      notes: [],
    });
    expect(facts.compensationStops).toBeCloseTo(-1 / 3, 9);
    // 45° 39′ 1.08″ and 13° 45′ 25.56″ by hand.
    expect(facts.latitudeDeg).toBeCloseTo(45.6503, ARC_DIGITS);
    expect(facts.longitudeDeg).toBeCloseTo(13.7571, ARC_DIGITS);
  });

  test.each([
    ['JPEG', jpegWith(SCOUTED)],
    ['PNG', pngWith(SCOUTED)],
    ['WebP', webpWith(SCOUTED)],
  ])('a %s says how large its picture is', async (_, bytes) => {
    const { widthPx, heightPx } = await factsOf(bytes);
    expect([widthPx, heightPx]).toEqual([6000, 4000]);
  });

  test('south and west are negative, and below the sea is negative', async () => {
    const facts = await withGps({ 1: ascii('S'), 3: ascii('W'), 5: byte(1) });
    expect(facts.latitudeDeg).toBeCloseTo(-45.6503, ARC_DIGITS);
    expect(facts.longitudeDeg).toBeCloseTo(-13.7571, ARC_DIGITS);
    expect(facts.elevationM).toBe(-3.1);
  });

  test('a device that writes whole minutes of arc with decimals says the same place', async () => {
    const facts = await withGps({ 2: rational([45, 1], [39018, 1000], [0, 1]) });
    expect(facts.latitudeDeg).toBeCloseTo(45.6503, ARC_DIGITS);
  });

  test('a photo without a position is an ordinary photo', async () => {
    const facts = await withExif(SCOUTED.exif);
    expect(facts).toMatchObject({ latitudeDeg: null, longitudeDeg: null, bearingDeg: null });
    expect(facts).toMatchObject({ fNumber: 8, notes: [] });
  });

  test('a photo of which the camera wrote nothing is an ordinary photo', async () => {
    expect(await factsOf(jpegWithout())).toEqual({
      name: 'scout-01.jpg',
      kind: 'JPEG',
      widthPx: 6000,
      heightPx: 4000,
      clockTime: null,
      takenAtMs: null,
      latitudeDeg: null,
      longitudeDeg: null,
      elevationM: null,
      bearingDeg: null,
      bearingNorth: 'true',
      focalLengthMm: null,
      focalLength35Mm: null,
      fNumber: null,
      shutterS: null,
      iso: null,
      compensationStops: 0,
      flashFired: false,
      orientation: 1,
      colourProfile: null,
      notes: [],
    });
  });

  test('a direction by the compass says so; one without its north is taken as true and noted', async () => {
    expect(await withGps({ 16: ascii('M') })).toMatchObject({
      bearingDeg: 300.12,
      bearingNorth: 'magnetic',
      notes: [],
    });
    expect((await withGps({ 16: ascii('') })).notes).toEqual([
      'The file does not say from which north its direction counts: taken as true north.',
    ]);
  });

  test('a direction of 360° is north', async () => {
    expect((await withGps({ 17: rational([360, 1]) })).bearingDeg).toBe(0);
  });

  // Exif 2.32, table of APEX values: Av 6 is f/8, Tv 8 is 1/256 s.
  test('aperture and time are read from their APEX values where the plain ones are missing', async () => {
    const facts = await withExif({ 0x9202: rational([6, 1]), 0x9201: srational([8, 1]) });
    expect(facts.fNumber).toBeCloseTo(8, 9);
    expect(facts.shutterS).toBeCloseTo(1 / 256, 9);
  });

  // Exif 2.32, annex G: a sensitivity above 65534 is written 65535, the figure in the next tag.
  test('an ISO too large for its field is read from the field behind it', async () => {
    const facts = await withExif({
      0x8827: short(65_535),
      0x8832: { type: 'long', values: [102_400] },
    });
    expect(facts.iso).toBe(102_400);
  });

  test('a flash that fired is known', async () => {
    expect((await withExif({ 0x9209: short(0x19) })).flashFired).toBe(true);
    expect((await withExif({ 0x9209: short(0x18) })).flashFired).toBe(false);
  });
});

const nameGiven = async (name: string): Promise<string> =>
  (await factsOf(jpegWithout(), name)).name;

describe('what cannot be is left out and noted', () => {
  test.each<[string, Directory, keyof PhotoFacts, string]>([
    [
      'f/0',
      { 0x829d: rational([0, 1]) },
      'fNumber',
      'F-number: found 0, expected 0.5 to 128; left out.',
    ],
    [
      'f over nothing',
      { 0x829d: rational([8, 0]) },
      'fNumber',
      'F-number: found no number, expected 0.5 to 128; left out.',
    ],
    ['ISO 0', { 0x8827: short(0) }, 'iso', 'ISO: found 0, expected 1 to 10000000; left out.'],
    [
      'no time at all',
      { 0x829a: rational([0, 1]) },
      'shutterS',
      'Shutter time: found 0 s, expected 0.000001 to 3600 s; left out.',
    ],
    [
      'a lens of 60 m',
      { 0x920a: rational([60_000, 1]) },
      'focalLengthMm',
      'Focal length: found 60000 mm, expected 1 to 5000 mm; left out.',
    ],
    [
      '30 February',
      { 0x9003: ascii('2027:02:30 10:00:00') },
      'clockTime',
      'Time: found ‘2027:02:30 10:00:00’, expected one such as 2027:05:14 19:30:05; left out.',
    ],
    [
      'the year 9999',
      { 0x9003: ascii('9999:02:03 10:00:00') },
      'clockTime',
      'Time: found ‘9999:02:03 10:00:00’, expected one such as 2027:05:14 19:30:05; left out.',
    ],
    [
      'markup for a time',
      { 0x9003: ascii('<img src=x onerror=alert(1)>') },
      'clockTime',
      'Time: found ‘<img src=x onerror=alert(1)>’, expected one such as 2027:05:14 19:30:05; left out.',
    ],
    [
      'an offset of 99 hours',
      { 0x9003: ascii('2027:05:14 10:00:00'), 0x9011: ascii('+99:00') },
      'takenAtMs',
      'Offset from UTC: found ‘+99:00’, expected one such as +02:00; left out.',
    ],
  ])('%s', async (_, exif, field, note) => {
    const facts = await withExif(exif);
    expect(facts[field]).toBeNull();
    expect(facts.notes).toEqual([note]);
  });

  test.each<[string, Directory, string]>([
    [
      'latitude 91°',
      { 2: rational([91, 1], [0, 1], [0, 1]) },
      'Latitude: found 91°, expected −90 to 90°; left out.',
    ],
    [
      'longitude 181°',
      { 4: rational([181, 1], [0, 1], [0, 1]) },
      'Longitude: found 181°, expected −180 to 180°; left out.',
    ],
    [
      'a latitude without its side',
      { 1: ascii('') },
      'Latitude: found no number, expected −90 to 90°; left out.',
    ],
    [
      'degrees over nothing',
      { 2: rational([45, 0], [0, 1], [0, 1]) },
      'Latitude: found no number, expected −90 to 90°; left out.',
    ],
    [
      '0°, 0°',
      { 2: rational([0, 1], [0, 1], [0, 1]), 4: rational([0, 1], [0, 1], [0, 1]) },
      'Position: found 0°, 0°, which devices write that know none; left out.',
    ],
  ])('%s: no half of a position is kept', async (_, gps, note) => {
    const facts = await withGps(gps);
    expect([facts.latitudeDeg, facts.longitudeDeg]).toEqual([null, null]);
    expect(facts.notes).toEqual([note]);
    expect(facts.bearingDeg).toBe(300.12);
  });

  test('a direction of 400° and a height of 20 km', async () => {
    const facts = await withGps({ 17: rational([400, 1]), 6: rational([20_000, 1]) });
    expect([facts.bearingDeg, facts.elevationM]).toEqual([null, null]);
    expect(facts.notes).toEqual([
      'Elevation: found 20000 m, expected −450 to 9000 m; left out.',
      'Direction: found 400°, expected 0 to 360°; left out.',
    ]);
  });

  test('a focal length of 0 on 35 mm film is how the standard writes ‘unknown’', async () => {
    expect(await withExif({ 0xa405: short(0) })).toMatchObject({
      focalLength35Mm: null,
      notes: [],
    });
  });

  test.each(['0000:00:00 00:00:00', '    :  :     :  :  '])(
    'a clock that was never set (%s) is no time, and nothing to remark on',
    async (text) => {
      expect(await withExif({ 0x9003: ascii(text) })).toMatchObject({ clockTime: null, notes: [] });
    },
  );

  test('an orientation that does not exist is upright', async () => {
    expect((await factsOf(jpegWith({ main: { 0x0112: short(77) } }))).orientation).toBe(1);
  });

  test('a name is plain text, without control characters, 120 characters at most', async () => {
    expect(await nameGiven('<script>alert(1)</script>.jpg')).toBe('<script>alert(1)</script>.jpg');
    expect(await nameGiven('pier\u0000\u001b[2J.jpg')).toBe('pier  [2J.jpg');
    expect(await nameGiven('x'.repeat(500))).toHaveLength(120);
    expect(await nameGiven('')).toBe('photo');
  });
});

const expectWithin = (figure: number | null, least: number, most: number): void => {
  if (figure !== null) expect(figure >= least && figure <= most).toBe(true);
};

describe('a file that is no photo is refused in a sentence', () => {
  test.each<[string, string | Uint8Array<ArrayBuffer>, string]>([
    ['a page', '<html><script>alert(1)</script></html>', 'a text'],
    ['a document', '%PDF-1.7\n', 'a PDF document'],
    ['an archive', 'PK\u0003\u0004 and more', 'a packed archive'],
    ['an animation', 'GIF89a and more of it', 'a GIF, which holds no camera data'],
    ['a film', '\u0000\u0000\u0000\u0018ftypisom\u0000\u0000\u0000\u0000', 'a film'],
    ['noise', Uint8Array.from([1, 2, 3, 200, 7, 9, 0, 0]), 'something else'],
  ])('%s', async (_, content, words) => {
    expect(await refusalOf(new File([content], 'notes.jpg'))).toBe(
      `notes.jpg: expected a photo (JPEG, HEIC, WebP, PNG or TIFF), found ${words}.`,
    );
  });

  test('an empty file', async () => {
    expect(await refusalOf(new File([], 'pier.jpg'))).toBe(
      'pier.jpg: expected a photo, found an empty file.',
    );
  });

  test('a file of 61 MB is refused by its size, before it is opened', async () => {
    const huge = Object.assign(new Blob([]), {
      name: 'pano.tif',
      arrayBuffer: () => Promise.reject(new Error('it was opened')),
    });
    Object.defineProperty(huge, 'size', { value: 61e6 });
    expect(await refusalOf(huge)).toBe(
      'pano.tif is too large: found 61 MB, expected at most 60 MB.',
    );
  });

  test('a file that went away since it was chosen', async () => {
    const gone = Object.assign(new Blob(['x']), {
      name: 'pier.jpg',
      arrayBuffer: () => Promise.reject(new Error('NotFoundError')),
    });
    expect(await refusalOf(gone)).toBe(
      'pier.jpg could not be opened. It may have been moved since it was chosen.',
    );
  });

  test('a JPEG cut short before its picture begins', async () => {
    const cut = jpegWith(SCOUTED).slice(0, 120);
    expect(await refusalOf(fileOf(cut))).toMatch(/^scout-01\.jpg is damaged or was cut short/);
  });

  test('cut anywhere, overwritten anywhere: an answer, never an accident, and every figure within its bounds', async () => {
    const files = [
      jpegWith(SCOUTED, 'little'),
      pngWith(SCOUTED),
      webpWith(SCOUTED),
      heicWith(SCOUTED),
      tiffWith(SCOUTED, 'little'),
    ];
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...files),
        fc.nat(),
        fc.array(fc.tuple(fc.nat(), fc.nat({ max: 255 })), { maxLength: 12 }),
        async (file, cut, damage) => {
          const bytes = file.slice(0, 1 + (cut % (file.length * 2)));
          for (const [at, value] of damage) bytes[at % bytes.length] = value;
          const read = await readPhoto(fileOf(bytes));
          if (!read.ok) {
            expect(read.problem).toMatch(/^scout-01\.jpg.{10,}\.$/s);
            return;
          }
          const { value } = read;
          expectWithin(value.latitudeDeg, -90, 90);
          expectWithin(value.longitudeDeg, -180, 180);
          expectWithin(value.bearingDeg, 0, 360 - 1e-9);
          expectWithin(value.elevationM, -450, 9000);
          expectWithin(value.fNumber, 0.5, 128);
          expectWithin(value.shutterS, 1e-6, 3600);
          expectWithin(value.iso, 1, 1e7);
          expectWithin(value.focalLengthMm, 1, 5000);
          expectWithin(value.takenAtMs, Date.UTC(1900), Date.UTC(2200));
          expect(value.latitudeDeg === null).toBe(value.longitudeDeg === null);
        },
      ),
      { numRuns: 600 },
    );
  });

  test('a directory that claims four thousand million values is read in no time and gives none', async () => {
    const bytes = jpegWith({ exif: { 0x829d: rational([8, 1]) } }, 'big');
    const text = [...bytes].map((value) => value.toString(16).padStart(2, '0')).join('');
    const at = text.indexOf('829d0005') / 2 + 4;
    bytes.set([0xff, 0xff, 0xff, 0xff], at);
    const read = await readPhoto(fileOf(bytes));
    expect(read).toMatchObject({ ok: true, value: { fNumber: null } });
  });
});
