import { expect, test } from 'vitest';

import { elevationFinding, movedFar } from '../../../../src/app/screens/scout/place-findings.ts';

const near = (distanceM: number): NonNullable<Parameters<typeof elevationFinding>[0]> => ({
  zone: { zone: 'Europe/Rome', alternatives: [], reason: '' },
  near: {
    distanceM,
    place: {
      name: 'Muggia',
      countryCode: 'IT',
      point: { latitudeDeg: 45.6, longitudeDeg: 13.77, elevationM: 7 },
      population: 13_000,
      zone: 'Europe/Rome',
    },
  },
});

test('elevation comes from a place within 15 km and says so; else it is sea level to be checked', () => {
  expect(elevationFinding(near(2400))).toEqual({
    elevationM: 7,
    origin: '7 m is that of Muggia, 2.4 km away; a hill or quay between differs',
  });
  expect(elevationFinding(near(16_000)).elevationM).toBe(0);
  expect(elevationFinding(null).origin).toMatch(/taken as sea level, check it/);
});

test('a spot that is moved more than 10 km is looked up again', () => {
  const from = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
  // A tenth of a degree of latitude is 11.1 km.
  expect(movedFar(from, { ...from, latitudeDeg: 45.75 })).toBe(true);
  expect(movedFar(from, { ...from, latitudeDeg: 45.73 })).toBe(false);
});
