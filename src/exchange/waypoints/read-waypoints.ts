import { fail, ok, type Result } from '../../core/units/result.ts';
import { MAX_FILE_BYTES } from '../file-text.ts';
import { coordinateLines } from './coordinate-lines.ts';
import { csv, csvTable } from './csv.ts';
import { decodedText } from './decoded-text.ts';
import { geojson } from './geojson.ts';
import { gpx } from './gpx.ts';
import { kml } from './kml.ts';
import { kmz } from './kmz.ts';
import { swappedAxesNote } from './swapped-axes.ts';
import type {
  ReadContext,
  ReadWaypoints,
  WaypointFormat,
  WaypointReading,
} from './waypoint-format.ts';
import { xmlProlog } from './xml-prolog.ts';

/** What can be read, in the order in which a dialog lists it. */
export const WAYPOINT_FORMATS: readonly WaypointFormat[] = [
  gpx,
  kml,
  kmz,
  geojson,
  csv,
  coordinateLines,
];

/** What can be written. */
export const WRITTEN_FORMATS = [gpx, kml, geojson, csv] as const;

/** A file as browsers hand it over. */
export type WaypointFile = {
  readonly name: string;
  /** Bytes. */
  readonly size: number;
  readonly arrayBuffer: () => Promise<ArrayBuffer>;
};

/** Waypoints of a file of unknown origin. What it is is told by its contents, not by its name. */
export async function readWaypointFile(
  file: WaypointFile,
  context: ReadContext,
): Promise<ReadWaypoints> {
  if (file.size > MAX_FILE_BYTES) return tooLarge(file.size);
  const buffer = await file.arrayBuffer().catch(() => null);
  if (buffer === null)
    return fail(
      'The file could not be opened. It may have been moved or locked since it was chosen.',
    );
  const bytes = new Uint8Array(buffer);
  if (bytes.length === 0) return fail('Expected waypoints, found an empty file.');
  const named = WAYPOINT_FORMATS.find(({ extensions }) =>
    extensions.some((extension) => file.name.toLowerCase().endsWith(extension)),
  );
  if (bytes[0] === 0x50 && bytes[1] === 0x4b)
    return finished(await kmz.readBytes(bytes, context), context, [misnamed(named, kmz)]);
  const decoded = decodedText(bytes);
  if (!decoded.ok)
    return named === kmz ? fail('Expected a KMZ archive, found a file that is no zip.') : decoded;
  const { text, notes } = decoded.value;
  const format = formatOf(text, named);
  if (!format.ok) return format;
  return finished(format.value.readText(text, context), context, [
    misnamed(named, format.value),
    ...notes,
  ]);
}

/** Waypoints of a pasted text: the text of any of the formats, or places line by line. */
export function readWaypointText(text: string, context: ReadContext): ReadWaypoints {
  if (text.length > MAX_FILE_BYTES) return tooLarge(text.length);
  const format = formatOf(text, undefined);
  return format.ok ? finished(format.value.readText(text, context), context, []) : format;
}

type TextFormat = WaypointFormat & Required<Pick<WaypointFormat, 'readText'>>;

function formatOf(text: string, named: WaypointFormat | undefined): Result<TextFormat, string> {
  if (text.trim() === '') return fail('Expected waypoints, found nothing but empty space.');
  const expected = `Expected ${named === undefined ? 'waypoints' : `a ${named.label} file`}`;
  const prolog = xmlProlog(text);
  if (prolog !== null) {
    const root = prolog.root ?? prolog.documentType;
    if (root === 'gpx' || root === 'kml') return ok(root === 'gpx' ? gpx : kml);
    if (root === 'html' || prolog.documentType === 'html')
      return fail(
        `${expected}, found a web page. The link may ask for a sign-in: save the file itself.`,
      );
    return fail(
      `${expected}, found XML${root === null ? '' : ` of the kind <${root.slice(0, 40)}>`}.`,
    );
  }
  if (/^\s*[{[]/.test(text)) return ok(geojson);
  if (named === gpx || named === kml || named === kmz || named === geojson)
    return fail(
      `${expected}, found ${named === kmz ? 'a file that is no zip' : 'plain text'} that begins with “${text.trim().slice(0, 40)}”.`,
    );
  return ok(named === csv || csvTable(text) !== null ? csv : coordinateLines);
}

const misnamed = (named: WaypointFormat | undefined, found: WaypointFormat): string | null =>
  named === undefined || named === found || (named === coordinateLines && found === csv)
    ? null
    : `Named as ${named.label}, but it is ${found.label} and was read as that.`;

const finished = (
  reading: ReadWaypoints,
  { near }: ReadContext,
  notes: readonly (string | null)[],
): ReadWaypoints => {
  if (!reading.ok) return reading;
  const { value } = reading;
  const all = [...notes, ...value.notes, swappedAxesNote(value.waypoints, near)];
  return ok({ ...value, notes: all.filter((note) => note !== null) } satisfies WaypointReading);
};

const tooLarge = (bytes: number): Result<never, string> =>
  fail(
    `The file is too large: found ${(bytes / 1e6).toFixed(1)} MB, expected at most ${MAX_FILE_BYTES / 1e6} MB.`,
  );
