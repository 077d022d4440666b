import { exposureOf } from './exif-exposure.ts';
import { placeOf } from './exif-place.ts';
import { textOf, wholeOf, type ExifTags } from './exif-values.ts';
import { withinNoting } from './exif-within.ts';
import type { PhotoFacts } from './photo-facts.ts';
import { clockTimeOf, instantAtOffset, offsetMinOf } from './photo-time.ts';

/** The tags of Exif 2.32 that are looked at; nothing else of a file is decoded. */
export const EXIF_TAGS = [
  'Orientation',
  'ExposureTime',
  'ShutterSpeedValue',
  'FNumber',
  'ApertureValue',
  'ISOSpeedRatings',
  'RecommendedExposureIndex',
  'StandardOutputSensitivity',
  'ExposureBiasValue',
  'Flash',
  'FocalLength',
  'FocalLengthIn35mmFilm',
  'ColorSpace',
  'DateTimeOriginal',
  'OffsetTimeOriginal',
  'DateTimeDigitized',
  'OffsetTimeDigitized',
  'GPSLatitudeRef',
  'GPSLatitude',
  'GPSLongitudeRef',
  'GPSLongitude',
  'GPSAltitudeRef',
  'GPSAltitude',
  'GPSImgDirectionRef',
  'GPSImgDirection',
] as const;

type ExifFacts = Omit<PhotoFacts, 'name' | 'kind' | 'widthPx' | 'heightPx' | 'colourProfile'>;

/** What the tags say, each value checked; what cannot be is left out and noted. */
export function exifFacts(tags: ExifTags): ExifFacts {
  const notes: string[] = [];
  const within = withinNoting(notes);
  return {
    ...timeOf(tags, notes),
    ...placeOf(tags, within, notes),
    ...exposureOf(tags, within),
    orientation: orientationOf(tags),
    notes,
  };
}

function timeOf(tags: ExifTags, notes: string[]): Pick<PhotoFacts, 'clockTime' | 'takenAtMs'> {
  const which = textOf(tags, 'DateTimeOriginal') === null ? 'Digitized' : 'Original';
  const text = textOf(tags, `DateTime${which}`);
  const clockTime = clockTimeOf(text);
  // A camera whose clock was never set writes zeros or blanks.
  if (text !== null && clockTime === null && /[1-9]/.test(text))
    notes.push(`Time: found ${quoted(text)}, expected one such as 2027:05:14 19:30:05; left out.`);
  if (clockTime === null) return { clockTime, takenAtMs: null };
  const offsetText = textOf(tags, `OffsetTime${which}`);
  const offsetMin = offsetMinOf(offsetText);
  if (offsetText !== null && offsetMin === null)
    notes.push(
      `Offset from UTC: found ${quoted(offsetText)}, expected one such as +02:00; left out.`,
    );
  return {
    clockTime,
    takenAtMs: offsetMin === null ? null : instantAtOffset(clockTime, offsetMin),
  };
}

const quoted = (text: string): string => `‘${text.slice(0, 40)}’`;

const orientationOf = (tags: ExifTags): number => {
  const value = wholeOf(tags, 'Orientation') ?? 1;
  return Number.isInteger(value) && value >= 1 && value <= 8 ? value : 1;
};
