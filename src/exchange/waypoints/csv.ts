import { parseCoordinates } from '../../core/place/coordinates-text.ts';
import type { Waypoint } from '../../core/plan/waypoint.ts';
import { fail } from '../../core/units/result.ts';
import { collectWaypoints, MAX_WAYPOINTS, type WrittenWaypoint } from './collect-waypoints.ts';
import { readCoordinateLines } from './coordinate-lines.ts';
import { csvRows, textCell, textOfCell } from './csv-cells.ts';
import { csvColumns, type CsvColumn, type CsvColumns } from './csv-columns.ts';
import { angleText, decimalText } from './decimal-text.ts';
import type { ReadContext, ReadWaypoints, WaypointFormat } from './waypoint-format.ts';

const DELIMITERS = ['\t', ';', ',', '|'] as const;
const HEADER_EXPECTED =
  'a first row that names its columns, such as name, latitude, longitude, elevation, bearing, note';

const readText = (text: string, context: ReadContext): ReadWaypoints => {
  const table = csvTable(text);
  if (table !== null) return readTable(table);
  const lines = readCoordinateLines(text, context);
  return lines.ok
    ? {
        ok: true,
        value: {
          ...lines.value,
          notes: [
            'No row names the columns: each row was read as a name and a coordinate.',
            ...lines.value.notes,
          ],
        },
      }
    : fail(`Expected ${HEADER_EXPECTED}, found “${firstLine(text).slice(0, 60)}”.`);
};

const firstLine = (text: string): string => text.trim().split(/[\r\n]/, 1)[0] ?? '';

type CsvTable = {
  readonly columns: CsvColumns;
  readonly rows: readonly (readonly string[])[];
};

/** The table that a text is, read with the delimiter by which its first row names a place; null where none does. */
export function csvTable(text: string): CsvTable | null {
  const stated = /^\s*sep=(.)[ \t]*\r?\n/i.exec(text);
  const body = stated === null ? text.trimStart() : text.slice(stated[0].length);
  for (const delimiter of stated?.[1] === undefined ? DELIMITERS : [stated[1]]) {
    const columns = csvColumns(csvRows(body.slice(0, 5000), delimiter, 1)[0] ?? []);
    if (columns !== null) return { columns, rows: csvRows(body, delimiter, MAX_ROWS + 2).slice(1) };
  }
  return null;
}

const readTable = ({ columns, rows }: CsvTable): ReadWaypoints =>
  collectWaypoints({
    of: 'the table',
    written: rows
      .slice(0, MAX_ROWS)
      .flatMap((row, index) =>
        row.every((cell) => cell.trim() === '')
          ? []
          : [writtenRow(row, columns, `row ${index + 2}`)],
      ),
    notes: [
      ...(columns.feet
        ? ['Elevations are in feet by their column and were turned into metres.']
        : []),
      ...(rows.length > MAX_ROWS ? [`Rows after the first ${MAX_ROWS} are not read.`] : []),
    ],
  });

function writtenRow(
  row: readonly string[],
  { at, feet }: CsvColumns,
  place: string,
): WrittenWaypoint {
  const cell = (column: CsvColumn): string | null => {
    const index = at[column];
    const text = index === undefined ? '' : (row[index] ?? '').trim();
    return text === '' ? null : text;
  };
  const text = (column: CsvColumn): string | null => {
    const found = cell(column);
    return found === null ? null : textOfCell(found);
  };
  const elevation = pointed(cell('elevation'));
  return {
    place,
    name: text('name'),
    ...angles(cell('latitude'), cell('longitude'), cell('coordinates')),
    elevation: feet && elevation !== null ? String(Number(elevation) * METRES_PER_FOOT) : elevation,
    note: text('note'),
    bearing: pointed(cell('bearing'))?.replace(/\s*°$/, '') ?? null,
    time: cell('time'),
  };
}

/** Twice what is taken, for rows that cannot be used. */
const MAX_ROWS = 2 * MAX_WAYPOINTS;

const METRES_PER_FOOT = 0.3048;

/** Decimal degrees as they stand, any other way of writing a place as decimal degrees. */
function angles(
  latitude: string | null,
  longitude: string | null,
  coordinates: string | null,
): Pick<WrittenWaypoint, 'latitude' | 'longitude'> {
  const plain = { latitude: pointed(latitude), longitude: pointed(longitude) };
  if (
    coordinates === null &&
    DECIMAL.test(plain.latitude ?? '0') &&
    DECIMAL.test(plain.longitude ?? '0')
  )
    return plain;
  const parsed = parseCoordinates(coordinates ?? `${latitude ?? ''}; ${longitude ?? ''}`);
  if (parsed.ok)
    return {
      latitude: String(parsed.value.latitudeDeg),
      longitude: String(parsed.value.longitudeDeg),
    };
  return coordinates === null ? plain : { latitude: coordinates, longitude: coordinates };
}

const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** A decimal comma as a point, a minus sign as a hyphen. */
const pointed = (text: string | null): string | null =>
  text?.replace(/^([+\-−]?\d*),(\d+)$/, '$1.$2').replace(/^−/, '-') ?? null;

const HEADER = 'name,latitude,longitude,elevation_m,bearing_deg,time,note';

/** RFC 4180, point decimals, UTF-8 with the mark by which spreadsheets know it. */
const write = (_title: string, waypoints: readonly Waypoint[]): string =>
  `\uFEFF${[HEADER, ...waypoints.map(rowOf)].join('\r\n')}\r\n`;

const rowOf = (waypoint: Waypoint): string =>
  [
    textCell(waypoint.name ?? ''),
    angleText(waypoint.latitudeDeg),
    angleText(waypoint.longitudeDeg),
    waypoint.elevationM === null ? '' : decimalText(waypoint.elevationM, 2),
    waypoint.bearingDeg === null ? '' : decimalText(waypoint.bearingDeg, 3),
    waypoint.takenAtMs === null ? '' : new Date(waypoint.takenAtMs).toISOString(),
    textCell(waypoint.note),
  ].join(',');

export const csv = {
  id: 'csv',
  label: 'CSV',
  extensions: ['.csv', '.tsv'],
  mediaType: 'text/csv',
  readText,
  write,
} as const satisfies WaypointFormat;
