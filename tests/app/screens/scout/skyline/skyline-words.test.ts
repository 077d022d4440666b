import { describe, expect, test } from 'vitest';

import {
  obstaclesLine,
  shareText,
  terrainLine,
  terrainNotes,
  traceLine,
} from '../../../../../src/app/screens/scout/skyline/source-lines.ts';
import { madeOf, originsOf } from '../../../../../src/app/screens/scout/skyline/source-words.ts';
import {
  answerNotes,
  elevationDoubt,
  terrainOf,
  terrainOrigin,
  type TerrainAnswer,
} from '../../../../../src/app/screens/scout/skyline/terrain-words.ts';
import {
  photoProblemText,
  runsText,
  sightDoubts,
  sightText,
} from '../../../../../src/app/screens/scout/skyline/trace-words.ts';
import { checkDocument } from '../../../../../src/core/plan/check-document.ts';
import { demoShoot } from '../../../../../src/core/plan/demo-shoot.ts';
import { TERRAIN } from '../../../../../src/core/plan/spot-schema.ts';
import type { SkylinePoint } from '../../../../../src/core/skyline/skyline.ts';
import { defined } from '../../../../support/defined.ts';

const pier = defined(demoShoot().spots['pier']);
const answer: TerrainAnswer = {
  altitudesDeg: Array.from({ length: 360 }, (_, sector) => sector / 10 - 20),
  groundElevationM: 12.4,
  voidShare: 0.031,
  uncoveredShare: 0.14,
  coveredKm: 18.6,
  sources: ['N45E013.hgt', 'N45E012.hgt'],
  unusedFiles: [],
  absurdCount: 0,
};
const place = { latitudeDeg: 45.65, longitudeDeg: 13.76 };
const terrain = terrainOf({
  answer,
  origin: terrainOrigin(answer, null),
  dated: '2027-05-01',
  place,
});
const none = { drawn: 0, imported: 0, sets: 0 };

describe('each source says where it comes from and what it decides, or what to do', () => {
  test('nothing is said to be none, with a way to have it', () => {
    expect(terrainLine(pier, 0)).toMatch(/^none: open elevation files/);
    expect(obstaclesLine(none, 0)).toMatch(/^none: draw or import/);
    expect(traceLine({ ...pier, skyline: {} }, 0)).toMatch(/^none: type points/);
    expect(madeOf({ ...pier, skyline: {} }, none)).toBe('flat');
  });

  test('what is there is named with origin, date and share', () => {
    expect(terrainLine({ ...pier, terrain }, 0.444)).toBe(
      'N45E013.hgt, N45E012.hgt; ground 12 m, every way to 19 km, 14 % of the way without data, Sat 1 May 2027; decides 44 % of the round',
    );
    expect(obstaclesLine({ drawn: 2, imported: 412, sets: 1 }, 0.004)).toBe(
      '2 drawn, 412 in an import; decides under 1 % of the round',
    );
    expect(traceLine(pier, 1)).toBe(
      '8 points; invented for the demo, date not noted; decides 100 % of the round',
    );
    expect(madeOf({ ...pier, terrain }, { drawn: 1, imported: 0, sets: 0 })).toBe(
      'terrain, obstacles, trace of 8 points',
    );
    expect(originsOf({ ...pier, terrain }, 0.1)).toBe(
      'terrain by N45E013.hgt, N45E012.hgt; obstacles on the map; trace: invented for the demo',
    );
    expect(originsOf(pier, 0)).toBe('invented for the demo');
  });

  test('a share is whole percents, never rounded to nothing', () => {
    expect([0, 0.004, 0.256, 1].map(shareText)).toEqual(['nothing', 'under 1 %', '26 %', '100 %']);
  });

  test('filled heights, a spot that moved, another ground, files out of reach and absurd heights are said', () => {
    const moved = { ...pier, terrain, latitudeDeg: 45.65, longitudeDeg: 13.76 };
    expect(terrainNotes(moved)).toEqual([
      '3 % of the heights were missing and filled in from their neighbours.',
    ]);
    // 0.001° of longitude at 45.65° N are 78 m.
    expect(terrainNotes({ ...moved, longitudeDeg: 13.761 })[0]).toBe(
      'The spot has moved 78 m since: work it out again.',
    );
    expect(elevationDoubt(answer, 4)).toContain(
      '12 m above sea level by the data, 4 m by the spot',
    );
    expect(elevationDoubt(answer, 13)).toBeNull();
    expect(answerNotes({ ...answer, unusedFiles: ['N10E020.hgt'], absurdCount: 1234 })).toEqual([
      'Out of reach, and not used: N10E020.hgt.',
      'Heights that no land has, taken as missing: 1,234.',
    ]);
    expect(answerNotes(answer)).toEqual([]);
  });
});

test('what a spot keeps of its terrain passes the check of the document, altitudes out of bounds held at them', () => {
  expect(checkDocument(TERRAIN, terrain)).toMatchObject({ ok: true });
  expect(terrain.altitudesDeg[0]).toBe(-10);
  expect(terrain.altitudesDeg[359]).toBe(15.9);
  expect(
    terrainOrigin(
      { ...answer, sources: Array.from({ length: 400 }, (_, at) => `file-${at}.hgt`) },
      null,
    ).length,
  ).toBeLessThan(300);
});

const at = (azimuthDeg: number, altitudeDeg: number): SkylinePoint => ({
  azimuthDeg,
  altitudeDeg,
});

describe('a new trace and the photo it comes from, in words', () => {
  test('points, arcs and the highest', () => {
    expect(runsText([[at(350, 1), at(362, 4)], [at(90, 2)]])).toBe(
      '3 points from 350° to 2° and at 90°, highest 4.0° at 2°',
    );
    expect(runsText([[at(0, 1), at(180, 4), at(360, 1)]])).toContain('all round');
    expect(runsText([])).toBe('no point yet');
  });

  const sight = {
    directionAt: () => ({ azimuthDeg: 0, altitudeDeg: 0 }),
    middle: { azimuthDeg: 300, altitudeDeg: -2 },
    horizontalFieldDeg: 61.9,
    rollDeg: 0,
    missDeg: 0.004,
    stretchPerDegree: 1 / 38,
  };

  test('where it looks, how wide, how far off', () => {
    expect(sightText(sight)).toBe(
      '62° wide, its middle at 300° WNW, 2.0° down; it misses the two points by 0.00°',
    );
    expect(sightText({ ...sight, rollDeg: -3.2 })).toContain('turned 3.2° anticlockwise');
  });

  test('a camera turned too far, altitudes that disagree and another focal length are doubted', () => {
    expect(sightDoubts(sight, 62)).toEqual([]);
    expect(sightDoubts(sight, null)).toEqual([]);
    expect(sightDoubts({ ...sight, rollDeg: 12 }, 80)).toHaveLength(2);
    expect(sightDoubts({ ...sight, missDeg: 1.5 }, null)[0]).toContain('missed by 1.5°');
  });

  test('a refusal says what was found and what was expected', () => {
    expect(photoProblemText({ kind: 'too-close', apartDeg: 1, apartShare: 0.04 })).toContain(
      'found 1.0° and 4 % of the width between them, expected at least 2° and 8 %',
    );
    expect(photoProblemText({ kind: 'no-such-picture', apartDeg: 170 })).toContain('found 170.0°');
  });
});
