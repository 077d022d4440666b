import { parseCoordinates } from '../../core/place/coordinates-text.ts';
import {
  isOpenLocationCode,
  isShortCode,
  openLocationCodeArea,
} from '../../core/place/open-location-code.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { collectWaypoints, MAX_WAYPOINTS, type WrittenWaypoint } from './collect-waypoints.ts';
import { readGeoUri } from './geo-uri.ts';
import type { ReadContext, ReadWaypoints, Skipped, WaypointFormat } from './waypoint-format.ts';

const LINE_LENGTH = 500;
/** Twice what is taken, for lines that are no place. */
const MAX_LINES = 2 * MAX_WAYPOINTS;

/** One place a line, in any way of writing one, with or without its name before or after it. */
export function readCoordinateLines(text: string, context: ReadContext): ReadWaypoints {
  const overLines = text.length <= LINE_LENGTH && /\n/.test(text.trim());
  const whole = overLines ? parseCoordinates(text) : null;
  if (whole?.ok === true)
    return collectWaypoints({ of: 'the text', written: [point('text', null, whole.value)] });
  const lines = text
    .split(/\r\n|[\n\r\u2028]/, MAX_LINES + 1)
    .map((line, index) => ({ line: line.trim(), place: `line ${index + 1}` }))
    .filter(({ line }) => line !== '');
  const written: WrittenWaypoint[] = [];
  const skipped: Skipped[] = [];
  const codes = { short: 0, wide: 0 };
  for (const { line, place } of lines.slice(0, MAX_LINES)) {
    const read = readLine(line, place, context);
    if (read.ok) {
      written.push(read.value.written);
      for (const kind of read.value.codes ?? []) codes[kind] += 1;
    } else skipped.push({ what: `${place}, “${shortened(line)}”`, why: read.problem });
  }
  return collectWaypoints({
    of: 'the text',
    written,
    skipped,
    notes: [
      ...(codes.short > 0
        ? [`${codes.short} × short code, completed near the place in view.`]
        : []),
      ...(codes.wide > 0
        ? [`${codes.wide} × code of eight digits, an area 278 m high: its middle is taken.`]
        : []),
      ...(lines.length > MAX_LINES ? [`Lines after the first ${MAX_LINES} are not read.`] : []),
    ],
  });
}

type LineRead = {
  readonly written: WrittenWaypoint;
  /** What is to be said of an open location code. */
  readonly codes?: readonly ('short' | 'wide')[];
};

function readLine(line: string, place: string, context: ReadContext): Result<LineRead, string> {
  if (line.length > LINE_LENGTH)
    return fail(`Found a line of ${line.length} characters; expected at most ${LINE_LENGTH}.`);
  const address = /(?:^|[\s,;:(<"])(geo:[^\s<>"]+)/i.exec(line)?.[1];
  if (address !== undefined) return addressLine(line, address, place);
  const plain = parseCoordinates(line);
  if (plain.ok) return ok({ written: point(place, null, plain.value) });
  const code = line.split(/[\s,;()]+/).find((word) => isOpenLocationCode(word));
  if (code !== undefined) return codeLine(line, code, place, context);
  return (
    namedLine(line, place) ??
    fail(`Found ${plain.problem.found}; expected ${plain.problem.expected}.`)
  );
}

function addressLine(line: string, address: string, place: string): Result<LineRead, string> {
  const read = readGeoUri(address.replace(/[.,;:]+$/, ''));
  if (!read.ok) return read;
  const { elevationM, uncertaintyM, name } = read.value;
  return ok({
    written: {
      ...point(place, name ?? nameBeside(line, address), read.value),
      elevation: elevationM === null ? null : String(elevationM),
      note: uncertaintyM === null ? null : `Position known to ${uncertaintyM} m`,
    },
  });
}

/** The side of the area that a code of eight digits names; those of fewer name whole districts. */
const EIGHT_DIGITS_DEG = 0.0025;

function codeLine(
  line: string,
  code: string,
  place: string,
  { near }: ReadContext,
): Result<LineRead, string> {
  const area = openLocationCodeArea(code, near);
  if (!area.ok) return fail(`Found ${area.problem.found}; expected ${area.problem.expected}.`);
  const { heightDeg } = area.value;
  if (heightDeg > 2 * EIGHT_DIGITS_DEG)
    return fail(
      `Found a code whose area is ${heightDeg}° high; expected one of at least eight digits.`,
    );
  return ok({
    written: point(place, nameBeside(line, code), area.value),
    codes: [
      ...(isShortCode(code) ? (['short'] as const) : []),
      ...(heightDeg > EIGHT_DIGITS_DEG / 2 ? (['wide'] as const) : []),
    ],
  });
}

/** 'Pier head: 45.6503, 13.7571', 'Pier head, 45.6503, 13.7571' or '45.6503, 13.7571, Pier head'. */
function namedLine(line: string, place: string): Result<LineRead, string> | null {
  const cuts = [...line.matchAll(/\s*[,;:|\t]\s*|\s+[–—-]\s+/g)];
  for (const cut of cuts) {
    const parsed = parseCoordinates(line.slice(cut.index + cut[0].length));
    const name = line.slice(0, cut.index);
    if (parsed.ok) return ok({ written: point(place, name, parsed.value) });
  }
  for (const cut of cuts.toReversed()) {
    const parsed = parseCoordinates(line.slice(0, cut.index));
    const name = line.slice(cut.index + cut[0].length);
    if (parsed.ok) return ok({ written: point(place, name, parsed.value) });
  }
  return null;
}

const nameBeside = (line: string, found: string): string =>
  line.replace(found, ' ').replace(/^[\s,;:<>()"–—-]+|[\s,;:<>()"–—-]+$/g, '');

const point = (
  place: string,
  name: string | null,
  { latitudeDeg, longitudeDeg }: { readonly latitudeDeg: number; readonly longitudeDeg: number },
): WrittenWaypoint => ({
  place,
  name,
  latitude: String(latitudeDeg),
  longitude: String(longitudeDeg),
  elevation: null,
  note: null,
  bearing: null,
  time: null,
});

const shortened = (line: string): string => (line.length > 40 ? `${line.slice(0, 39)}…` : line);

export const coordinateLines = {
  id: 'lines',
  label: 'Coordinates, one a line',
  extensions: ['.txt'],
  mediaType: 'text/plain',
  readText: readCoordinateLines,
} as const satisfies WaypointFormat;
