import { createHash } from 'node:crypto';

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { KIT_VERSION } from '../../src/core/plan/kit.ts';
import { SHOOT_VERSION } from '../../src/core/plan/shoot.ts';
import { kitReferences } from '../../src/core/plan/references.ts';
import { valueAt } from '../../src/core/plan/same-value.ts';
import { addPhoto, removePhoto } from '../../src/core/plan/photo-edits.ts';
import type { Shoot } from '../../src/core/plan/shoot.ts';
import { applyEdit } from '../../src/core/plan/history.ts';
import type { FilePhotos } from '../../src/exchange/file-photos.ts';
import { readShootFile, writeShootFile } from '../../src/exchange/shoot-file.ts';
import { defined } from '../support/defined.ts';
import { plainPhoto } from '../support/plain-photo.ts';
import { shootWithKitArbitrary } from '../support/shoot-arbitrary.ts';

const sha256 = async (bytes: Uint8Array): Promise<string> =>
  createHash('sha256').update(bytes).digest('hex');

const opened = (source: Parameters<typeof readShootFile>[0]): ReturnType<typeof readShootFile> =>
  readShootFile(source, sha256);

const write = (file: Omit<Parameters<typeof writeShootFile>[0], 'photos'>): string =>
  writeShootFile({ ...file, photos: {} });

const written = (): string =>
  write({ shoot: demoShoot(), kit: demoKit(), exportedAtMs: 1_810_000_000_000 });

type Loose = { [key: string]: unknown };

const isLoose = (value: unknown): value is Loose => typeof value === 'object' && value !== null;

const looseAt = (file: unknown, ...path: readonly string[]): Loose => {
  const found = valueAt(file, path);
  if (!isLoose(found)) throw new Error(`nothing at ${path.join('.')}`);
  return found;
};

/** The demo's file with one thing about it changed. */
const changed = (change: (file: unknown) => void): string => {
  const file: unknown = JSON.parse(written());
  change(file);
  return JSON.stringify(file);
};

const setAt = (path: string, value: unknown): string =>
  changed((file) => {
    const keys = path.split('.');
    looseAt(file, ...keys.slice(0, -1))[defined(keys.at(-1))] = value;
  });

const sentencesFor = async (
  source: Parameters<typeof readShootFile>[0],
): Promise<readonly string[]> => {
  const read = await opened(source);
  if (read.ok) throw new Error('the file was taken');
  return read.problem.sentences;
};

describe('a shoot leaves and returns', () => {
  test('a file read back equals the shoot that was written, for any shoot', async () => {
    await fc.assert(
      fc.asyncProperty(shootWithKitArbitrary, async ({ shoot, kit }) => {
        const read = await opened(write({ shoot, kit, exportedAtMs: 0 }));
        expect(read).toMatchObject({ ok: true });
        if (read.ok) expect(read.value.shoot).toStrictEqual(shoot);
      }),
      { numRuns: 150 },
    );
  });

  test('it carries copies of exactly the kit items the shoot names', async () => {
    await fc.assert(
      fc.asyncProperty(shootWithKitArbitrary, async ({ shoot, kit }) => {
        const read = await opened(write({ shoot, kit, exportedAtMs: 0 }));
        if (!read.ok) throw new Error(read.problem.sentences.join(' '));
        const named = kitReferences(shoot).map(({ shelf, id }) => `${shelf} ${id}`);
        const shelves = [
          'cameras',
          'lenses',
          'heads',
          'modifiers',
          'filters',
          'gels',
          'stands',
        ] as const;
        const carried = shelves.flatMap((shelf) =>
          Object.entries(read.value.kit[shelf]).map(([id, item]) => {
            expect(item).toStrictEqual(kit[shelf][id]);
            return `${shelf} ${id}`;
          }),
        );
        expect(carried.toSorted()).toEqual([...new Set(named)].toSorted());
      }),
      { numRuns: 100 },
    );
  });

  test('the skyline worked out when the shoot was opened stays behind', () => {
    const shoot = demoShoot();
    const spots = Object.fromEntries(
      Object.entries(shoot.spots).map(([id, spot]) => [
        id,
        { ...spot, skylineNow: [{ azimuthDeg: 0, altitudeDeg: 5 }] },
      ]),
    );
    expect(write({ shoot: { ...shoot, spots }, kit: demoKit(), exportedAtMs: 0 })).toBe(
      write({ shoot, kit: demoKit(), exportedAtMs: 0 }),
    );
  });

  test('a head takes its battery along', async () => {
    const [id, head] = defined(
      Object.entries(demoKit().heads).find(([, { batteryId }]) => batteryId !== null),
    );
    const batteryId = defined(head.batteryId ?? undefined);
    const kit = { ...demoKit(), heads: { [id]: head } };
    const read = await opened(write({ shoot: demoShoot(), kit, exportedAtMs: 0 }));
    expect(read.ok && Object.keys(read.value.kit.batteries)).toEqual([batteryId]);
  });

  test('the same shoot gives the same text whatever the order in which its spots were added', () => {
    const shoot = demoShoot();
    const turned = {
      ...shoot,
      spots: Object.fromEntries(Object.entries(shoot.spots).toReversed()),
    };
    expect(write({ shoot: turned, kit: demoKit(), exportedAtMs: 1_810_000_000_000 })).toBe(
      written(),
    );
  });

  test('a shoot whose head was deleted from the kit still leaves and returns', async () => {
    const read = await opened(
      write({ shoot: demoShoot(), kit: { ...demoKit(), heads: {} }, exportedAtMs: 0 }),
    );
    expect(read).toMatchObject({ ok: true, value: { shoot: demoShoot(), kit: { heads: {} } } });
  });

  test('markup in a note comes back as the text it is', async () => {
    const note = '<script>alert(1)</script>';
    const read = await opened(setAt('shoot.spots.pier.parkingNote', note));
    expect(read).toMatchObject({
      ok: true,
      value: { shoot: { spots: { pier: { parkingNote: note } } } },
    });
  });

  test('a file from an editor that puts a byte order mark first is read', async () => {
    expect(await opened(`\uFEFF${written()}`)).toMatchObject({ ok: true });
  });
});

describe('a file that is no shoot is refused in words', () => {
  test('cut short anywhere, it says so and where', async () => {
    const text = written();
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: text.trimEnd().length - 1 }), async (length) => {
        const lines = text.slice(0, length).split('\n');
        expect(await sentencesFor(text.slice(0, length))).toEqual([
          `The file was cut short: it breaks off at line ${lines.length}, column ${defined(lines.at(-1)).length + 1}, before the shoot is complete.`,
        ]);
      }),
    );
  });

  test.each([
    [
      'PK\u0003\u0004',
      'found a file that is not JSON: it cannot be read on from line 1, column 1, where it has ‘P’.',
    ],
    [
      '{"a": 1,\n "b" 2}',
      'found a file that is not JSON: it cannot be read on from line 2, column 6, where it has ‘2’.',
    ],
    ['', 'found an empty file.'],
    ['[1, 2]', 'found a list.'],
    ['7', 'found a single value.'],
    ['{}', 'found an empty object.'],
    [
      '{"type": "FeatureCollection", "features": []}',
      'found a file of the kind ‘FeatureCollection’.',
    ],
    ['{"speed": 1, "colour": 2}', 'found another kind of file, with the fields speed, colour.'],
  ])('%j', async (text, words) => {
    expect(await sentencesFor(text)).toEqual([`Expected an Undersky shoot, ${words}`]);
  });

  test('a file of 90 MB is refused by its size, before it is opened', async () => {
    const file = { size: 90e6, text: () => Promise.reject(new Error('it was opened')) };
    expect(await sentencesFor(file)).toEqual([
      'The file is too large: found 90 MB, expected at most 60 MB.',
    ]);
    expect(await sentencesFor(' '.repeat(60e6 + 1))).toEqual([
      'The file is too large: found 60.1 MB, expected at most 60 MB.',
    ]);
  });

  test('a file that went away since it was chosen is refused in words', async () => {
    const file = { size: 10, text: () => Promise.reject(new Error('NotFoundError')) };
    expect(await sentencesFor(file)).toEqual([
      'The file could not be opened. It may have been moved or locked since it was chosen.',
    ]);
  });

  test.each([
    ['version', 'file', 2],
    ['shoot.version', 'shoot', SHOOT_VERSION],
    ['kit.version', 'kit', KIT_VERSION],
  ])('a newer %s', async (path, part, present) => {
    expect(await sentencesFor(setAt(path, 7))).toEqual([
      `This shoot was made by a newer version: ${part} version 7, this app reads up to ${present}.`,
    ]);
  });

  test.each([
    ['version', 'one', 'file.version: expected a version number, 1 or above, found "one".'],
    ['shoot.version', 0, 'shoot.version: expected a version number, 1 or above, found 0.'],
    ['shoot', undefined, 'shoot: expected a shoot, found nothing.'],
    ['kit', [], 'kit: expected a kit, found a list.'],
    [
      'shoot.spots.pier.latitudeDeg',
      412,
      'shoot.spots.pier.latitudeDeg: expected at most 90, found 412.',
    ],
    [
      'shoot.spots.pier.latitudeDeg',
      null,
      'shoot.spots.pier.latitudeDeg: expected a number, found null.',
    ],
    [
      'shoot.date',
      '2027-02-30',
      'shoot.date: expected a date that exists, as 2027-05-14, found ‘2027-02-30’.',
    ],
    ['shoot.title', '', 'shoot.title: expected at least 1 characters, found ‘’.'],
    ['shoot.spots', 5, 'shoot.spots: expected an object, found 5.'],
    [
      'shoot.condition',
      'fog',
      'shoot.condition: expected one of clear, haze, broken-cloud, bright-overcast, heavy-overcast, found ‘fog’.',
    ],
    [
      'shoot.spots.a b',
      {},
      'shoot.spots.a b: expected an id of letters, digits, - and _, found ‘a b’.',
    ],
    [
      'shoot.spots.constructor',
      {},
      'shoot.spots.constructor: expected an id that is no name built into every object, found ‘constructor’.',
    ],
  ])('%s = %j', async (path, value, sentence) => {
    expect(await sentencesFor(setAt(path, value))).toEqual([sentence]);
  });

  test('a number too large for any machine is refused where it stands', async () => {
    const text = setAt('shoot.spots.pier.elevationM', 'HERE').replace('"HERE"', '1e999');
    expect(await sentencesFor(text)).toEqual([
      'shoot.spots.pier.elevationM: expected a number, found Infinity.',
    ]);
  });

  test('of many faults the first five are named and the others counted', async () => {
    const text = changed((file) => {
      for (const id of Object.keys(looseAt(file, 'shoot', 'spots')))
        for (const field of ['latitudeDeg', 'longitudeDeg'] as const)
          looseAt(file, 'shoot', 'spots', id)[field] = 999;
    });
    const sentences = await sentencesFor(text);
    expect(sentences).toHaveLength(6);
    expect(sentences[5]).toBe('And 3 more.');
  });

  test('a setup at a spot that is not in the file is refused', async () => {
    const sentences = await sentencesFor(
      changed((file) => {
        delete looseAt(file, 'shoot', 'spots')['pier'];
      }),
    );
    expect(sentences[0]).toMatch(
      /^shoot\.setups\.\w+\.spotId: expected the id of a spot of this shoot, found ‘pier’, which is not there\.$/,
    );
  });

  test('a light on a head that is not in the file is refused', async () => {
    const sentences = await sentencesFor(setAt('kit.heads', {}));
    expect(sentences[0]).toMatch(
      /^shoot\.setups\.\w+\.lights\.\w+\.headId: expected the id of one of the heads in this file, found ‘[\w-]+’, which is not there\.$/,
    );
  });

  test('a key that reaches into every object is refused, and reaches nothing', async () => {
    const text = written().replace('"spots": {', '"spots": { "__proto__": { "polluted": true },');
    expect(await sentencesFor(text)).toEqual([
      'shoot.spots.__proto__: expected no field of this name in a shoot, found one.',
    ]);
    expect('polluted' in {}).toBe(false);
  });

  test('a file nested a million deep is refused, not choked on', async () => {
    const text = `{"format":"undersky-shoot-file","version":1,"shoot":${'['.repeat(1e6)}${']'.repeat(1e6)}}`;
    expect(await sentencesFor(text)).toEqual(['shoot: expected a shoot, found a list.']);
  });
});

const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3, 250, 0xff, 0xd9]);
/** SHA-256 of those ten bytes, by coreutils’ sha256sum. */
const HASH = 'ce77d753d23bd931aceb4157b9d8e7c1aad8bed645a65cc58787458062187344';

const photographed: Shoot = applyEdit(
  demoShoot(),
  addPhoto('pier', 'p1', { ...plainPhoto, contentHash: HASH }),
).document;

const fileWith = (shoot: Shoot, photos: FilePhotos): string =>
  writeShootFile({ shoot, kit: demoKit(), photos, exportedAtMs: 0 });

const carried: FilePhotos = { [HASH]: { type: 'image/jpeg', bytes: JPEG } };

/** The file of a shoot with one photo, the photo’s entry changed. */
const withEntry = (change: (entry: Loose) => void): string => {
  const file: unknown = JSON.parse(fileWith(photographed, carried));
  change(looseAt(file, 'photos', HASH));
  return JSON.stringify(file);
};

describe('photos go along with a shoot', () => {
  test('a picture comes back byte for byte under its hash', async () => {
    expect(await opened(fileWith(photographed, carried))).toMatchObject({
      ok: true,
      value: { shoot: photographed, photos: carried },
    });
  });

  test('whatever its bytes, a picture survives the way through text', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 30_000 }), async (behind) => {
        const bytes = Uint8Array.from([0xff, 0xd8, 0xff, ...behind]);
        const hash = await sha256(bytes);
        const { document } = applyEdit(
          demoShoot(),
          addPhoto('pier', 'p1', { ...plainPhoto, contentHash: hash }),
        );
        const read = await opened(fileWith(document, { [hash]: { type: 'image/jpeg', bytes } }));
        expect(read.ok && read.value.photos[hash]?.bytes).toEqual(bytes);
      }),
      { numRuns: 30 },
    );
  });

  test('only pictures that the shoot names go along; one of a photo left out does not', async () => {
    const { document } = applyEdit(photographed, removePhoto('pier', 'p1'));
    expect(fileWith(document, carried)).not.toContain(HASH);
    expect(await opened(fileWith(document, carried))).toMatchObject({ value: { photos: {} } });
  });

  test('a shoot whose picture did not come along still opens', async () => {
    expect(await opened(fileWith(photographed, {}))).toMatchObject({
      ok: true,
      value: { shoot: photographed, photos: {} },
    });
  });

  test('a file of the first version, which knew no photos, still opens', async () => {
    const text = changed((file) => {
      const first = looseAt(file);
      first['version'] = 1;
      delete first['photos'];
    });
    expect(await opened(text)).toMatchObject({ ok: true, value: { photos: {} } });
  });

  test('a picture that nothing names is left unread', async () => {
    const text = changed((file) => {
      looseAt(file, 'photos')['b'.repeat(64)] = 'no picture at all';
    });
    expect(await opened(text)).toMatchObject({ ok: true, value: { photos: {} } });
  });

  test.each<[string, (entry: Loose) => void, string]>([
    [
      'a byte changed',
      (entry) => (entry['base64'] = btoa('\xff\xd8\xff other')),
      'the bytes that its hash names, found others',
    ],
    [
      'no base64',
      (entry) => (entry['base64'] = '<script>'),
      'its bytes as base64 text, found another text',
    ],
    ['no bytes', (entry) => delete entry['base64'], 'its bytes as base64 text, found none'],
    [
      'another kind',
      (entry) => (entry['type'] = 'image/svg+xml'),
      'the type image/jpeg, found "image/svg+xml"',
    ],
    [
      'a page that calls itself a JPEG',
      (entry) => (entry['base64'] = btoa('<svg onload=alert(1)>')),
      'a JPEG picture, found something else',
    ],
    [
      'a picture of 3 MB',
      (entry) => (entry['base64'] = 'A'.repeat(4e6)),
      'at most 2 MB, found 3 MB',
    ],
  ])('%s is refused', async (_, change, words) => {
    expect(await sentencesFor(withEntry(change))).toEqual([
      `photos.${HASH.slice(0, 12)}…: expected ${words}.`,
    ]);
  });

  test('photos that are no collection are refused', async () => {
    expect(await sentencesFor(setAt('photos', 7))).toEqual([
      'photos: expected an object, found something else.',
    ]);
  });
});
