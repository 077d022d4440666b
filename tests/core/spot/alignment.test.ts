import { Refraction } from 'astronomy-engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alignmentDays, type Alignment } from '../../../src/core/spot/alignment.ts';
import type { AlignmentQuestion, SkyBody } from '../../../src/core/spot/alignment-question.ts';
import { dayBoundsMs } from '../../../src/core/units/civil-time.ts';
import { largestError } from '../../support/largest-error.ts';
import {
  referenceDirection,
  referenceMoonPhase,
  separationDeg,
} from '../../support/reference-sky.ts';
import { runThrough } from '../../support/run-through.ts';
import { seededRandom } from '../../support/seeded-framings.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

type Stand = { readonly azimuthDeg: number; readonly altitudeDeg: number };

/** Sæmundsson's refraction as astronomy-engine has it, for 1013 hPa and 15 °C. */
const lifted = ({ azimuthDeg, altitudeDeg }: Stand): Stand => ({
  azimuthDeg,
  altitudeDeg:
    altitudeDeg + Refraction('normal', altitudeDeg) * (1013 / 1010) * ((273 + 10) / (273 + 15)),
});
const otherBody = (body: SkyBody, instantMs: number, place: AlignmentQuestion['place']): Stand =>
  lifted(referenceDirection(body === 'sun' ? 'Sun' : 'Moon', instantMs, place));

const rad = (deg: number): number => (deg * Math.PI) / 180;

/** A level camera's picture by the tangents of turn and rise. */
const inLevelPicture = (
  { azimuthDeg, altitudeDeg }: Stand,
  { bearingDeg, focalLengthMm, sensorWidthMm, sensorHeightMm }: AlignmentQuestion['framing'],
): { xFraction: number; yFraction: number } => {
  const turn = rad(azimuthDeg - bearingDeg);
  return {
    xFraction: (Math.tan(turn) * focalLengthMm) / sensorWidthMm,
    yFraction: ((Math.tan(rad(altitudeDeg)) / Math.cos(turn)) * focalLengthMm) / sensorHeightMm,
  };
};

const level = {
  bearingDeg: 285,
  tiltDeg: 0,
  focalLengthMm: 35,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
};
const lisbon: AlignmentQuestion = {
  body: 'sun',
  place: { latitudeDeg: 38.7, longitudeDeg: -9.14 },
  zone: 'Europe/Lisbon',
  fromDate: '2027-03-01',
  days: 400,
  framing: level,
  wanted: { xFraction: 0, yFraction: 0.15 },
  toleranceDeg: 0.5,
  skyline: [],
};

const search = (question: AlignmentQuestion): ReturnType<typeof alignmentDays> =>
  alignmentDays(question);
const answerOf = (question: AlignmentQuestion) => runThrough(search(question)).answer;
const found = (question: AlignmentQuestion): readonly Alignment[] => {
  const answer = answerOf(question);
  return answer.ok ? answer.value.alignments : [];
};
const minutesOf = (alignments: readonly Alignment[]): readonly number[] =>
  alignments.flatMap(({ firstMs, lastMs }) =>
    Array.from(
      { length: (lastMs - firstMs) / MINUTE_MS + 1 },
      (_, minute) => firstMs + minute * MINUTE_MS,
    ),
  );

/** A skyline of twelve corners and its straight lines, worked out on its own. */
const ragged = (
  random: () => number,
): { corners: AlignmentQuestion['skyline']; edge: (azimuthDeg: number) => number } => {
  const heights = Array.from({ length: 12 }, () => 6 * random());
  return {
    corners: heights.map((altitudeDeg, at) => ({ azimuthDeg: 30 * at, altitudeDeg })),
    edge: (azimuthDeg) => {
      const at = Math.floor(azimuthDeg / 30);
      const share = azimuthDeg / 30 - at;
      return (heights[at % 12] ?? NaN) * (1 - share) + (heights[(at + 1) % 12] ?? NaN) * share;
    },
  };
};

/** Where the body stands over the horizon some time after the start. */
const aimed = (
  body: SkyBody,
  place: AlignmentQuestion['place'],
  fromMs: number,
  random: () => number,
): Stand => {
  for (let tries = 0; tries < 60; tries += 1) {
    const stand = otherBody(body, fromMs + tries * 5_000_000 + random() * 7_200_000, place);
    if (stand.altitudeDeg > 1 && stand.altitudeDeg < 85) return stand;
  }
  return { azimuthDeg: 180, altitudeDeg: 5 };
};

describe('every minute of a plain scan with another library, and no minute more', () => {
  /** Of the places themselves, see their own tests; and of the edge at a slope of 0.2. */
  const AGREE_DEG = 0.02;
  const EDGE_DEG = 0.03;
  const RADIUS_DEG = 0.27;
  const DAYS = 27;

  test.each<SkyBody>(['sun', 'moon'])('the %s at 9 places from pole to pole', (body) => {
    const random = seededRandom(body === 'sun' ? 3 : 5);
    let minutesSeen = 0;
    for (let at = 0; at < 9; at += 1) {
      const place = { latitudeDeg: -89 + (178 * at) / 8, longitudeDeg: -180 + 360 * random() };
      const fromMs = Date.UTC(2026, 0, 1) + Math.floor(700 * random()) * DAY_MS;
      const { corners, edge } = ragged(random);
      const target = aimed(body, place, fromMs + 12 * DAY_MS, random);
      const toleranceDeg = 0.5 + 3 * random();
      const question: AlignmentQuestion = {
        body,
        place,
        zone: 'UTC',
        fromDate: new Date(fromMs).toISOString().slice(0, 10),
        days: DAYS,
        framing: { ...level, bearingDeg: target.azimuthDeg, tiltDeg: target.altitudeDeg },
        wanted: { xFraction: 0, yFraction: 0 },
        toleranceDeg,
        skyline: corners,
      };
      const ours = new Set(minutesOf(found(question)));
      const missing: number[] = [];
      const surplus: number[] = [];
      for (let ms = fromMs; ms < fromMs + DAYS * DAY_MS; ms += MINUTE_MS) {
        const stand = otherBody(body, ms, place);
        const missDeg = separationDeg(stand, target);
        const overDeg = stand.altitudeDeg + RADIUS_DEG - Math.max(0, edge(stand.azimuthDeg));
        const surely = missDeg < toleranceDeg - AGREE_DEG && overDeg > EDGE_DEG;
        const possibly = missDeg < toleranceDeg + AGREE_DEG && overDeg > -EDGE_DEG;
        if (surely && !ours.has(ms)) missing.push(ms);
        if (!possibly && ours.has(ms)) surplus.push(ms);
      }
      expect({ at, missing, surplus }).toEqual({ at, missing: [], surplus: [] });
      minutesSeen += ours.size;
    }
    expect(minutesSeen).toBeGreaterThan(150);
  });
});

describe('each date of 400 is a date by the other library', () => {
  const record = largestError('miss of sun or moon at the point, astronomy-engine', '°', {
    quantity: 'sun or moon at a point of the picture',
    method: 'searched to the minute over 400 days',
    comparedWith: 'astronomy-engine',
  });
  const place = lisbon.place;
  test.each<SkyBody>(['sun', 'moon'])('the %s lands at the wanted point of the picture', (body) => {
    const question = { ...lisbon, body };
    const alignments = found(question);
    expect(alignments.length).toBeGreaterThan(3);
    for (const { best } of alignments) {
      const stand = otherBody(body, best.instantMs, place);
      const point = inLevelPicture(stand, level);
      // 0.02° of the picture's 54.4° by 37.8°, a little more away from its centre.
      expect(Math.abs(point.xFraction - (best.inPicture?.xFraction ?? NaN))).toBeLessThan(0.0005);
      expect(Math.abs(point.yFraction - (best.inPicture?.yFraction ?? NaN))).toBeLessThan(0.0008);
      const wanted = {
        azimuthDeg: 285,
        altitudeDeg: (Math.atan((0.15 * 24) / 35) * 180) / Math.PI,
      };
      expect(record(separationDeg(stand, wanted) - best.missDeg)).toBeLessThan(0.02);
      expect(best.missDeg).toBeLessThanOrEqual(0.5);
    }
  });

  test('the moon’s lit share goes with each date', () => {
    for (const { best, illuminatedFraction } of found({ ...lisbon, body: 'moon' }))
      expect(
        Math.abs(
          (illuminatedFraction ?? NaN) - referenceMoonPhase(best.instantMs).illuminatedFraction,
        ),
      ).toBeLessThan(0.0005);
    expect(found(lisbon).every(({ illuminatedFraction }) => illuminatedFraction === null)).toBe(
      true,
    );
  });
});

describe('dates that others have published', () => {
  /**
   * The dates and minutes that the American Museum of Natural History gave for 2017, 'half sun' and
   * 'full sun' on the street grid, which is turned by 29° (its announcement). The landscape across
   * the river is taken as 0.6°, which the printed minutes imply.
   */
  test.each([
    ['half', '2017-05-29', '2017-05-30T00:13Z'],
    ['full', '2017-05-30', '2017-05-31T00:12Z'],
    ['full', '2017-07-12', '2017-07-13T00:20Z'],
    ['half', '2017-07-13', '2017-07-14T00:21Z'],
  ])('a %s sun stands over Manhattan’s cross streets on %s', (disc, date, at) => {
    const centreDeg = disc === 'half' ? 0.6 : 0.87;
    const alignments = found({
      body: 'sun',
      place: { latitudeDeg: 40.758, longitudeDeg: -73.985 },
      zone: 'America/New_York',
      fromDate: '2017-03-01',
      days: 300,
      framing: { ...level, bearingDeg: 299.1, focalLengthMm: 200 },
      wanted: { xFraction: 0, yFraction: (Math.tan(rad(centreDeg)) * 200) / 24 },
      toleranceDeg: 0.25,
      skyline: [{ azimuthDeg: 0, altitudeDeg: 0.6 }],
    });
    // The year has no others: 25 May to 1 June and 10 to 17 July.
    expect(
      alignments.filter((other) => !/-05-(2[5-9]|3.)|-06-01|-07-1[0-7]/.test(other.date)),
    ).toEqual([]);
    const there = alignments.find((alignment) => alignment.date === date);
    // Printed to a minute.
    expect(Math.abs((there?.best.instantMs ?? NaN) - Date.parse(at))).toBeLessThanOrEqual(
      MINUTE_MS,
    );
    // In a minute the sun sinks by a third of its disc.
    expect(Math.abs((there?.best.discShare ?? NaN) - (disc === 'half' ? 0.5 : 1))).toBeLessThan(
      0.2,
    );
  });

  /** US Naval Observatory data for July 2019, altitude 89.9 at both. */
  test.each([
    ['Honolulu', 21 + 18 / 60, -(157 + 49 / 60), '2019-07-16', '2019-07-16T22:37Z'],
    ['Hilo', 19 + 42 / 60, -(155 + 5 / 60), '2019-07-24', '2019-07-24T22:27Z'],
  ])('the sun stands overhead in %s in July 2019', (_town, latitudeDeg, longitudeDeg, date, at) => {
    const overhead = found({
      body: 'sun',
      place: { latitudeDeg, longitudeDeg },
      zone: 'Pacific/Honolulu',
      fromDate: '2019-07-01',
      days: 31,
      framing: { ...level, tiltDeg: 90 },
      wanted: { xFraction: 0, yFraction: 0 },
      toleranceDeg: 0.3,
      skyline: [],
    });
    const best = overhead.toSorted((one, other) => one.best.missDeg - other.best.missDeg)[0];
    // The sun's way at noon changes by 0.15° to 0.2° a day there: 0.1° may fall on a neighbour.
    const days = Math.abs(Date.parse(best?.date ?? '') - Date.parse(date)) / DAY_MS;
    expect(days).toBeLessThanOrEqual(1);
    const onDate = overhead.find((alignment) => alignment.date === date);
    expect(onDate?.best.missDeg).toBeLessThan(0.2);
    expect(Math.abs((onDate?.best.instantMs ?? NaN) - Date.parse(at))).toBeLessThanOrEqual(
      MINUTE_MS,
    );
  });
});

describe('laws', () => {
  const questions = fc.record({
    body: fc.constantFrom<SkyBody>('sun', 'moon'),
    place: fc.record({
      latitudeDeg: fc.double({ min: -90, max: 90, noNaN: true }),
      longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
    }),
    zone: fc.constantFrom('Europe/Rome', 'Pacific/Apia', 'America/St_Johns'),
    fromDate: fc.constantFrom('2027-03-20', '2027-06-10', '2027-10-25', '2011-12-25'),
    days: fc.constant(6),
    framing: fc.record({
      bearingDeg: fc.double({ min: 0, max: 359.9, noNaN: true }),
      tiltDeg: fc.double({ min: 0, max: 60, noNaN: true }),
      focalLengthMm: fc.constantFrom(24, 85),
      sensorWidthMm: fc.constant(36),
      sensorHeightMm: fc.constant(24),
    }),
    wanted: fc.record({
      xFraction: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
      yFraction: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    }),
    toleranceDeg: fc.double({ min: 1, max: 20, noNaN: true }),
    skyline: fc.constant([]),
  });

  test('a wider tolerance loses no minute', () => {
    fc.assert(
      fc.property(questions, fc.double({ min: 1, max: 1.5, noNaN: true }), (question, wider) => {
        const narrow = minutesOf(found(question));
        const wide = new Set(
          minutesOf(found({ ...question, toleranceDeg: question.toleranceDeg * wider })),
        );
        expect(narrow.every((ms) => wide.has(ms))).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  test('a higher skyline adds no minute, and one of 90° leaves none', () => {
    fc.assert(
      fc.property(questions, fc.double({ min: 0, max: 40, noNaN: true }), (question, heightDeg) => {
        const flat = new Set(minutesOf(found(question)));
        const ringed = (altitudeDeg: number): readonly number[] =>
          minutesOf(found({ ...question, skyline: [{ azimuthDeg: 0, altitudeDeg }] }));
        expect(ringed(heightDeg).every((ms) => flat.has(ms))).toBe(true);
        expect(ringed(90.3)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  test('each alignment lies on its date, in order, with its best minute inside', () => {
    fc.assert(
      fc.property(questions, (question) => {
        let beforeMs = -Infinity;
        for (const { date, firstMs, lastMs, best } of found(question)) {
          const { startMs, endMs } = dayBoundsMs(date, question.zone);
          expect(firstMs).toBeGreaterThanOrEqual(startMs);
          expect(lastMs).toBeLessThan(endMs);
          expect(firstMs).toBeGreaterThan(beforeMs);
          expect(best.instantMs).toBeGreaterThanOrEqual(firstMs);
          expect(best.instantMs).toBeLessThanOrEqual(lastMs);
          expect(best.missDeg).toBeLessThanOrEqual(question.toleranceDeg);
          expect(best.discShare).toBeGreaterThan(0);
          beforeMs = lastMs;
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('days that are not 24 hours long', () => {
  /** Near the south pole the October sun goes round all day, 15° an hour. */
  test.each([
    ['Europe/Rome', '2027-10-31', 2.5 / 24],
    ['America/New_York', '2027-11-07', 1.5 / 24],
  ])('in %s the hour that clocks show twice on %s is searched whole', (zone, date, share) => {
    const place = { latitudeDeg: -89.9, longitudeDeg: 0 };
    const { startMs, endMs } = dayBoundsMs(date, zone);
    expect((endMs - startMs) / 3_600_000).toBe(25);
    const middle = otherBody('sun', startMs + share * DAY_MS, place);
    const around = found({
      ...lisbon,
      place,
      zone,
      fromDate: date,
      days: 2,
      framing: { ...level, bearingDeg: middle.azimuthDeg, tiltDeg: middle.altitudeDeg },
      wanted: { xFraction: 0, yFraction: 0 },
      toleranceDeg: 15,
    });
    expect(around.map((alignment) => alignment.date)).toContain(date);
    // 15° off on both sides at an altitude of 14° to 16°: just over two hours.
    const first = around[0];
    const hours = ((first?.lastMs ?? NaN) - (first?.firstMs ?? NaN)) / 3_600_000;
    expect(hours).toBeGreaterThan(2.0);
    expect(hours).toBeLessThan(2.2);
  });
});

describe('no date, and why', () => {
  test('a ridge of 8.2° over a point at 5° is named, by how high it stands', () => {
    const skyline = [{ azimuthDeg: 0, altitudeDeg: 8.2 }];
    const yFraction = (Math.tan(rad(5)) * 35) / 24;
    const answer = answerOf({ ...lisbon, wanted: { xFraction: 0, yFraction }, skyline });
    expect(answer.ok).toBe(false);
    if (answer.ok || answer.problem.kind !== 'below-skyline') throw new Error('expected a ridge');
    expect(answer.problem.skylineDeg).toBeCloseTo(8.2, 9);
    expect(answer.problem.pointDeg).toBeCloseTo(5, 9);
  });

  test('a point under the level of the camera is below a flat horizon', () => {
    const answer = answerOf({ ...lisbon, wanted: { xFraction: 0, yFraction: -0.2 } });
    expect(answer).toMatchObject({ ok: false, problem: { kind: 'below-skyline', skylineDeg: 0 } });
  });

  /** The sun's declination at the solstice is the obliquity, 23.44°. */
  test('at 52° north the sun comes no nearer to 70° in the south than 8.55°, at the solstice', () => {
    const answer = answerOf({
      ...lisbon,
      place: { latitudeDeg: 52, longitudeDeg: 0 },
      zone: 'Europe/London',
      framing: { ...level, bearingDeg: 180, tiltDeg: 70 },
      wanted: { xFraction: 0, yFraction: 0 },
    });
    if (answer.ok || answer.problem.kind !== 'never-near') throw new Error('expected no date');
    const { nearest } = answer.problem;
    // Refraction at 61° lifts by 0.009°; half a minute at noon is 0.06° to the side.
    expect(Math.abs(nearest.missDeg - (70 - (90 - 52 + 23.437 + 0.009)))).toBeLessThan(0.01);
    expect(nearest.date).toBe('2027-06-21');
    expect(Math.abs(nearest.instantMs - Date.UTC(2027, 5, 21, 12, 2))).toBeLessThan(2 * MINUTE_MS);
  });

  /** On 8 May the sun passes this point at 284.89°, on 9 May at 285.11°: one minute each. */
  const tower = [
    { azimuthDeg: 280, altitudeDeg: 0 },
    { azimuthDeg: 280, altitudeDeg: 40 },
    { azimuthDeg: 284.999, altitudeDeg: 40 },
    { azimuthDeg: 284.999, altitudeDeg: 0 },
  ];
  const besideTower = {
    ...lisbon,
    fromDate: '2027-05-08',
    days: 2,
    wanted: { xFraction: 0, yFraction: (Math.tan(rad(9.13)) * 35) / 24 },
    toleranceDeg: 0.2,
  };

  test('without a tower beside the point both days have their minute', () => {
    const azimuths = found(besideTower).map(({ best }) => best.azimuthDeg);
    expect(azimuths).toHaveLength(2);
    expect(azimuths[0]).toBeLessThan(284.999);
    expect(azimuths[1]).toBeGreaterThan(284.999);
  });

  test('a tower takes the day on which the sun passes behind it, and the other is left', () => {
    const answer = answerOf({ ...besideTower, skyline: tower });
    if (!answer.ok) throw new Error('expected the ninth of May');
    expect(answer.value.alignments.map(({ date }) => date)).toEqual(['2027-05-09']);
    expect(answer.value.hiddenDates).toBe(1);
  });

  test('with the first day alone nothing is left, and the tower is said to hide it', () => {
    expect(answerOf({ ...besideTower, days: 1, skyline: tower })).toEqual({
      ok: false,
      problem: { kind: 'hidden', hiddenDates: 1 },
    });
  });

  test('in the polar night of 75° north the sun is farthest, and below the horizon', () => {
    const answer = answerOf({
      ...lisbon,
      place: { latitudeDeg: 75, longitudeDeg: 20 },
      fromDate: '2027-12-01',
      days: 40,
      framing: { ...level, bearingDeg: 180 },
    });
    if (answer.ok || answer.problem.kind !== 'never-near') throw new Error('expected no date');
    expect(answer.problem.nearest.altitudeDeg).toBeLessThan(-5);
  });

  test.each([
    [{ fromDate: '2027-02-30' }, 'First date: found ‘2027-02-30’, expected a date'],
    [{ fromDate: '1888-05-14' }, 'First date: found ‘1888-05-14’, expected a date of 1950 to 2049'],
    [{ zone: 'Mars/Olympus' }, 'Time zone: found ‘Mars/Olympus’, expected one as Europe/Rome'],
    [{ days: 401 }, 'Dates: found 401, expected 1 to 400'],
    [{ days: 2.5 }, 'Dates: found 2.5, expected 1 to 400'],
    [{ toleranceDeg: 0 }, 'Tolerance: found 0°, expected 0.1° to 30°'],
    [{ toleranceDeg: NaN }, 'Tolerance: found NaN°, expected 0.1° to 30°'],
    [{ wanted: { xFraction: 0.6, yFraction: 0 } }, 'Point: found one outside the picture'],
    [{ wanted: { xFraction: NaN, yFraction: 0 } }, 'Point: found one outside the picture'],
    [{ zone: 'Pacific/Apia', fromDate: '2011-12-30', days: 1 }, 'Dates: Pacific/Apia skipped'],
  ])('%o is answered with a sentence', (wrong, sentence) => {
    const answer = answerOf({ ...lisbon, ...wrong });
    if (answer.ok || answer.problem.kind !== 'bad-input') throw new Error('expected a refusal');
    expect(answer.problem.sentences.join(' ')).toContain(sentence);
  });
});

test('a long search tells how far it has come, ever farther', () => {
  const { steps } = runThrough(search({ ...lisbon, body: 'moon', toleranceDeg: 20 }));
  expect(steps.length).toBeGreaterThan(2);
  expect(steps.every((share, at) => share > (steps[at - 1] ?? 0) && share <= 1)).toBe(true);
});
