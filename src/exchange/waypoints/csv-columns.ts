export type CsvColumn =
  | 'name'
  | 'latitude'
  | 'longitude'
  | 'coordinates'
  | 'elevation'
  | 'bearing'
  | 'time'
  | 'note';

export type CsvColumns = {
  readonly at: Readonly<Partial<Record<CsvColumn, number>>>;
  /** The elevation column says feet. */
  readonly feet: boolean;
};

const NAMES: Readonly<Record<CsvColumn, RegExp>> = {
  name: /^(?:name|title|label|spot|waypoint|place)$/,
  latitude: /^(?:lat|latitude|y)$/,
  longitude: /^(?:lon|lng|long|longitude|x)$/,
  coordinates:
    /^(?:coordinates?|coords?|position|location|latlon|latlng|latitude longitude|lat lon)$/,
  elevation: /^(?:elevation|ele|elev|altitude|alt|height)$/,
  bearing: /^(?:bearing|heading|direction|azimuth|facing)$/,
  time: /^(?:time|timestamp|date ?time|date|taken)$/,
  note: /^(?:notes?|descriptions?|desc|comments?|remarks?)$/,
};

const UNITS = /\b(?:m|metres?|meters?|ft|feet|deg|degrees?|wgs ?84|dd|decimal|asl|amsl|utc)\b/g;

/** Which column holds what, by the names in the first row; null where none of them is a place. */
export function csvColumns(header: readonly string[]): CsvColumns | null {
  const words = header.map((cell) =>
    cell
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, ' ')
      .trim(),
  );
  const bare = words.map((cell) => cell.replace(UNITS, '').replace(/\s+/g, ' ').trim());
  const at: Partial<Record<CsvColumn, number>> = {};
  for (const column of Object.keys(NAMES) as CsvColumn[]) {
    const index = bare.findIndex((cell) => NAMES[column].test(cell));
    if (index >= 0) at[column] = index;
  }
  const placed =
    at.coordinates !== undefined || (at.latitude !== undefined && at.longitude !== undefined);
  if (!placed) return null;
  return { at, feet: /\b(?:ft|feet)\b/.test(words[at.elevation ?? -1] ?? '') };
}
