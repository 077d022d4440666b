import { find } from 'geo-tz/now';
import { beforeAll, describe, expect, test } from 'vitest';
import { decodePlaces } from '../../src/atlas/places-text.ts';
import { zoneFinder, zoneOf } from '../../src/atlas/zone-at.ts';
import type { ZoneAt } from '../../src/atlas/zone-at.ts';
import { destination } from '../../src/core/place/geodesy.ts';
import type { GeoPoint } from '../../src/core/place/geo-point.ts';
import { atlasFilesOfTheBuild } from '../support/atlas-files.ts';
import { evenPlace, evenSpread } from '../support/even-spread.ts';
import { largestError } from '../support/largest-error.ts';

const readAtlas = atlasFilesOfTheBuild();
const zoneAt = zoneFinder(readAtlas);
let places: ReturnType<typeof decodePlaces>;
beforeAll(async () => {
  places = decodePlaces(await readAtlas('atlas/places.tsv'));
});

const at = (latitudeDeg: number, longitudeDeg: number): Promise<ZoneAt> =>
  zoneAt({ latitudeDeg, longitudeDeg });

describe('the zone of a spot', () => {
  test.each([
    { where: 'Miramare', point: [45.7025, 13.7125], zone: 'Europe/Rome' },
    { where: 'the tip of Kiritimati', point: [1.87, -157.4], zone: 'Pacific/Kiritimati' },
    { where: 'Apia', point: [-13.83, -171.76], zone: 'Pacific/Apia' },
    { where: 'Tromsø', point: [69.65, 18.96], zone: 'Europe/Oslo' },
    { where: 'Sydney', point: [-33.87, 151.21], zone: 'Australia/Sydney' },
  ] as const)('$where keeps $zone, without doubt', async ({ point, zone }) => {
    const found = await at(point[0], point[1]);
    expect(found).toMatchObject({ zone, alternatives: [] });
    expect(found.reason).toMatch(/^The zone of .*km away\.$/);
  });

  test('at Lake Powell is Phoenix by the nearest town, and Denver is offered', async () => {
    // Page, Arizona, keeps no summer time; the Utah shore beyond and border tables say Denver.
    const found = await at(36.99, -111.49);
    expect(found.zone).toBe('America/Phoenix');
    expect(found.alternatives).toContain('America/Denver');
    expect(found.reason).toContain('Page');
    expect(found.reason).toContain('check which holds');
  });

  test('far from any town comes from the border table and says so', async () => {
    const found = await at(-24.5, 127.5);
    expect(found.zone).toBe('Australia/Perth');
    expect(found.reason).toContain('table of zone borders');
  });

  test('zones that keep the same clocks are not offered beside each other', () => {
    const zones = ['Europe/Vienna', 'Europe/Rome', 'Europe/London', 'Europe/Lisbon'];
    let asked = 0;
    const found = zoneOf({ latitudeDeg: 47, longitudeDeg: 11.5 }, null, () => {
      asked += 1;
      return zones[asked % zones.length] ?? '';
    });
    expect([found.zone, ...found.alternatives].toSorted()).toEqual([
      'Europe/London',
      'Europe/Rome',
    ]);
  });

  test('the open sea beyond the coast makes no doubt', () => {
    const found = zoneOf({ latitudeDeg: 45.6, longitudeDeg: 13.5 }, null, (_, longitudeDeg) =>
      longitudeDeg < 13.5 ? 'Etc/GMT-1' : 'Europe/Rome',
    );
    expect(found).toMatchObject({ zone: 'Europe/Rome', alternatives: [] });
  });
});

const offsetsMin = (zone: string): string =>
  [0, 6]
    .map((month) => {
      const parts = new Intl.DateTimeFormat('en-GB', {
        timeZone: zone,
        timeZoneName: 'longOffset',
      });
      return parts
        .formatToParts(Date.UTC(2025, month, 15, 12))
        .find(({ type }) => type === 'timeZoneName')?.value;
    })
    .join(' ');

type Tally = { asked: number; wrong: number; silentlyWrong: number; doubted: number };

/** Where geo-tz has two zones for one point, in disputed land, either counts. */
const compare = async (points: readonly GeoPoint[]): Promise<Tally> => {
  const tally: Tally = { asked: 0, wrong: 0, silentlyWrong: 0, doubted: 0 };
  for (const point of points) {
    const truth = find(point.latitudeDeg, point.longitudeDeg).map(offsetsMin);
    const { zone, alternatives } = await zoneAt(point);
    tally.asked += 1;
    if (alternatives.length > 0) tally.doubted += 1;
    if (truth.includes(offsetsMin(zone))) continue;
    tally.wrong += 1;
    if (!alternatives.some((other) => truth.includes(offsetsMin(other)))) tally.silentlyWrong += 1;
  }
  return tally;
};

describe('the clocks agree with geo-tz', () => {
  const recordTowns = largestError('zone near towns, geo-tz: other clocks', '% of points', {
    quantity: 'time zone of a spot',
    method: 'nearest town, then an embedded table of borders',
    comparedWith: 'clocks of geo-tz, some 800 points near towns',
  });
  const recordLand = largestError('zone on land, geo-tz: other clocks', '% of points', {
    quantity: 'time zone of a spot',
    method: 'nearest town, then an embedded table of borders',
    comparedWith: 'clocks of geo-tz, 300 points of land anywhere',
  });

  test('around 800 towns: seldom wrong, hardly ever without offering the right ones', async () => {
    const points = Array.from({ length: 800 }, (_, n) => {
      const place = places[Math.floor(evenSpread(n, 0) * places.length)];
      if (!place) throw new Error('no places');
      return destination(place.point, {
        distanceM: 6000 * evenSpread(n, 1),
        bearingDeg: 360 * evenSpread(n, 2),
      });
    }).filter(
      // A walk from a harbour may end at sea, where no clocks are kept.
      ({ latitudeDeg, longitudeDeg }) =>
        !find(latitudeDeg, longitudeDeg).some((zone) => zone.startsWith('Etc/')),
    );
    const tally = await compare(points);
    console.log('zone near towns, geo-tz:', tally);
    expect(tally.asked).toBeGreaterThan(700);
    // Measured on 20 000 towns: 0.4 % wrong, 0.06 % silently; 6.5 % doubted.
    expect(recordTowns((100 * tally.wrong) / tally.asked)).toBeLessThan(1);
    expect(tally.silentlyWrong / tally.asked).toBeLessThan(0.003);
    expect(tally.doubted / tally.asked).toBeLessThan(0.12);
  }, 60_000);

  test('at 300 points of land anywhere: wrong or doubted more often, rarely silent', async () => {
    const points = Array.from({ length: 1500 }, (_, n) =>
      evenPlace(n, { southDeg: -55, northDeg: 75 }),
    )
      .filter(
        ({ latitudeDeg, longitudeDeg }) =>
          !find(latitudeDeg, longitudeDeg).some((zone) => zone.startsWith('Etc/')),
      )
      .slice(0, 300);
    const tally = await compare(points);
    console.log('zone anywhere on land, geo-tz:', tally);
    expect(tally.asked).toBe(300);
    expect(recordLand((100 * tally.wrong) / tally.asked)).toBeLessThan(8);
    expect(tally.silentlyWrong / tally.asked).toBeLessThan(0.02);
  }, 60_000);
});
