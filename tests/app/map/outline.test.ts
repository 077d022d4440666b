import { describe, expect, test } from 'vitest';
import { clipRing } from '../../../src/app/map/clip-ring.ts';
import { freeBoxes } from '../../../src/app/map/free-boxes.ts';
import { graticuleLines, graticuleStepDeg } from '../../../src/app/map/graticule-step.ts';
import { flatOutline } from '../../../src/app/map/map-outline.ts';

/** Shoelace formula. */
const areaOf = (ring: ArrayLike<number>): number => {
  let twice = 0;
  for (let index = 0; index < ring.length; index += 2) {
    const next = (index + 2) % ring.length;
    twice +=
      (ring[index] ?? 0) * (ring[next + 1] ?? 0) - (ring[next] ?? 0) * (ring[index + 1] ?? 0);
  }
  return Math.abs(twice) / 2;
};

const box = { left: 0, top: 0, right: 10, bottom: 10 };

describe('land cut to one tile', () => {
  test.each([
    { what: 'an island inside stays whole', ring: [2, 2, 8, 2, 8, 8, 2, 8], area: 36 },
    { what: 'an island elsewhere vanishes', ring: [20, 2, 28, 2, 28, 8], area: 0 },
    { what: 'land all round fills it', ring: [-90, -90, 90, -90, 90, 90, -90, 90], area: 100 },
    {
      what: 'half of an island across the edge is left',
      ring: [5, 0, 15, 0, 15, 10, 5, 10],
      area: 50,
    },
    {
      what: 'a diagonal coast past the corner',
      ring: [-10, 5, 5, -10, 90, -10, 90, 90, -10, 90],
      area: 100,
    },
    { what: 'a diagonal coast over the corner', ring: [-10, 15, 15, -10, 90, 90], area: 87.5 },
    {
      what: 'a coast with many points far outside',
      ring: [-50, 5, -60, 4, -70, 3, -70, -60, -40, -70, 5, -80, 5, 5],
      area: 25,
    },
  ])('$what', ({ ring, area }) => {
    expect(areaOf(clipRing(ring, box))).toBeCloseTo(area, 9);
  });
});

const outlineOf = (...rings: number[][][]): ReturnType<typeof flatOutline> =>
  flatOutline({
    land: { type: 'MultiPolygon', coordinates: rings.map((ring) => [ring]) },
    borders: { type: 'MultiLineString', coordinates: [] },
  });

describe('land on the date line', () => {
  test('an island on it is small on both sides, not a bar across the world', () => {
    const island = [
      [179, 10],
      [-179, 10],
      [-179, 11],
      [179, 11],
      [179, 10],
    ];
    const boxes = outlineOf(island).polygons.map((polygon) => polygon.box);
    expect(boxes).toHaveLength(2);
    // 2° of 360° in a world 256 px wide.
    for (const { left, right } of boxes) expect(right - left).toBeCloseTo((2 / 360) * 256, 9);
    expect(boxes.some(({ right }) => right > 256)).toBe(true);
    expect(boxes.some(({ left }) => left < 0)).toBe(true);
  });

  test('a coast once round the south pole is closed behind it', () => {
    const coast = [
      [-180, -70],
      [-90, -70],
      [0, -70],
      [90, -70],
      [180, -70],
      [-180, -70],
    ];
    const polygon = outlineOf(coast).polygons[0];
    expect(polygon?.box.bottom).toBe(256);
    const top = polygon?.box.top ?? Number.NaN;
    expect(areaOf(polygon?.rings[0]?.points ?? [])).toBeCloseTo(256 * (256 - top), 6);
  });
});

describe('the graticule', () => {
  test.each([
    { zoom: 0, stepDeg: 30 },
    { zoom: 3, stepDeg: 30 },
    { zoom: 6, stepDeg: 5 },
    { zoom: 14, stepDeg: 0.01 },
  ])('steps by $stepDeg° at zoom $zoom', ({ zoom, stepDeg }) => {
    expect(graticuleStepDeg(zoom)).toBe(stepDeg);
  });

  test('its lines are round numbers', () => {
    expect(graticuleLines({ fromDeg: 13.71, toDeg: 13.95, stepDeg: 0.1 })).toEqual([13.8, 13.9]);
    expect(graticuleLines({ fromDeg: -3, toDeg: 3, stepDeg: 2 })).toEqual([-2, 0, 2]);
    expect(graticuleLines({ fromDeg: 1, toDeg: 2, stepDeg: 5 })).toEqual([]);
  });
});

const at = (left: number) => ({ left, right: left + 10, top: 0, bottom: 10 });

describe('names that would cover each other', () => {
  test('the first one stands, the next takes its other place or none', () => {
    expect(freeBoxes([[at(0)], [at(5), at(20)], [at(8), at(22)]], [])).toEqual([0, 1, -1]);
  });

  test('none stands on an obstacle', () => {
    expect(freeBoxes([[at(0)], [at(50)]], [at(3)])).toEqual([-1, 0]);
  });
});
