import { wrapDeg360 } from '../units/angle.ts';
import { fail, ok, type Result } from '../units/result.ts';
import type { Skyline, SkylinePoint } from './skyline.ts';
import { LEAST_TRACE_ALTITUDE_DEG, MOST_TRACE_ALTITUDE_DEG } from './traced-skyline.ts';

export type TraceLineFault = {
  /** The first line is 1. */
  readonly line: number;
  /** What was found and what was expected. */
  readonly sentence: string;
};

const MOST_LINES = 3600;
const MOST_FAULTS = 8;

const WITH_POINT = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)`;
const WITH_EITHER = String.raw`[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)`;
const PAIRS = [
  new RegExp(`^(${WITH_EITHER})\\s*[;\\t]\\s*(${WITH_EITHER})$`),
  new RegExp(`^(${WITH_POINT})\\s*,\\s*(${WITH_POINT})$`),
  new RegExp(`^(${WITH_EITHER})\\s+(${WITH_EITHER})$`),
];
const HEADING = /^["']?\p{L}/u;

/**
 * Azimuth and altitude in degrees, a pair to a line, parted by white space, a semicolon, a tab or,
 * with decimal points, a comma. Empty lines, lines after # and a heading are passed over. Every
 * faulty line is named, up to a few; one is enough for no answer.
 */
export function readTraceText(text: string): Result<Skyline, readonly TraceLineFault[]> {
  const lines = text.split(/\r\n|\n|\r/);
  if (lines.length > MOST_LINES)
    return fail([
      {
        line: MOST_LINES + 1,
        sentence: `found ${lines.length} lines, expected at most ${MOST_LINES}`,
      },
    ]);
  const points: SkylinePoint[] = [];
  const faults: TraceLineFault[] = [];
  lines.forEach((written, index) => {
    const line = written.replace(/#.*/, '').replace(/°/g, ' ').replace(/[−–]/g, '-').trim();
    if (line === '' || (points.length === 0 && faults.length === 0 && HEADING.test(line))) return;
    const read = readPair(line);
    if (read.ok) points.push(read.value);
    else faults.push({ line: index + 1, sentence: read.problem });
  });
  if (faults.length > MOST_FAULTS)
    return fail([
      ...faults.slice(0, MOST_FAULTS),
      {
        line: faults[MOST_FAULTS]?.line ?? lines.length,
        sentence: `and ${faults.length - MOST_FAULTS} more lines are faulty`,
      },
    ]);
  if (faults.length > 0) return fail(faults);
  if (points.length === 0)
    return fail([{ line: 1, sentence: 'found no pair, expected an azimuth and an altitude' }]);
  return ok(points);
}

function readPair(line: string): Result<SkylinePoint, string> {
  const pair = PAIRS.map((pattern) => pattern.exec(line)).find((match) => match !== null);
  const found = `found ‘${line.slice(0, 40)}’`;
  if (pair === undefined)
    return fail(`${found}, expected an azimuth and an altitude in degrees, as 212.5 4.3`);
  const [azimuthDeg = NaN, altitudeDeg = NaN] = pair
    .slice(1)
    .map((number) => Number(number.replace(',', '.')));
  if (!(azimuthDeg >= -360 && azimuthDeg <= 360))
    return fail(`${found}, expected an azimuth from −360 to 360`);
  if (!(altitudeDeg >= LEAST_TRACE_ALTITUDE_DEG && altitudeDeg <= MOST_TRACE_ALTITUDE_DEG))
    return fail(`${found}, expected an altitude from −10 to 89`);
  return ok({ azimuthDeg: wrapDeg360(azimuthDeg), altitudeDeg });
}
