import { fail, ok, type Result } from '../../core/units/result.ts';
import { decodedText } from './decoded-text.ts';
import { kml } from './kml.ts';
import type { WaypointFormat } from './waypoint-format.ts';
import { unzippedEntry, zipEntries, type ZipEntry } from './zip-entry.ts';

const readBytes: NonNullable<WaypointFormat['readBytes']> = async (bytes) => {
  const entries = await zipEntries(bytes);
  if (!entries.ok) return entries;
  const entry = mainKml(entries.value);
  if (!entry.ok) return entry;
  const unzipped = await unzippedEntry(bytes, entry.value);
  if (!unzipped.ok) return unzipped;
  const decoded = decodedText(unzipped.value);
  if (!decoded.ok) return decoded;
  const reading = kml.readText(decoded.value.text);
  if (!reading.ok) return reading;
  const others = entries.value.filter(({ name }) => KML_NAME.test(name)).length - 1;
  return ok({
    ...reading.value,
    notes: [
      ...decoded.value.notes,
      ...(others > 0 ? [`Read ${entry.value.name}; ${others} × other KML file left out.`] : []),
      ...reading.value.notes,
    ],
  });
};

const KML_NAME = /\.kml$/i;

/** doc.kml by the standard's advice, else the first in the main folder, else the first. */
const mainKml = (entries: readonly ZipEntry[]): Result<ZipEntry, string> => {
  const kmls = entries.filter(({ name }) => KML_NAME.test(name) && !name.startsWith('__MACOSX/'));
  const main =
    kmls.find(({ name }) => name.toLowerCase() === 'doc.kml') ??
    kmls.find(({ name }) => !name.includes('/')) ??
    kmls[0];
  return main === undefined
    ? fail(`Expected a KML file in the archive, found none among its ${entries.length} files.`)
    : ok(main);
};

export const kmz = {
  id: 'kmz',
  label: 'KMZ',
  extensions: ['.kmz'],
  mediaType: 'application/zip',
  readBytes,
} as const satisfies WaypointFormat;
