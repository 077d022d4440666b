import { ratioOf, wholeOf, type ExifTags } from './exif-values.ts';
import type { Within } from './exif-within.ts';
import type { PhotoFacts } from './photo-facts.ts';

type Exposure = Pick<
  PhotoFacts,
  | 'focalLengthMm'
  | 'focalLength35Mm'
  | 'fNumber'
  | 'shutterS'
  | 'iso'
  | 'compensationStops'
  | 'flashFired'
>;

const LENGTHS = { least: 1, most: 5000, unit: ' mm' };
const MOST_COMPENSATION = 10;

export function exposureOf(tags: ExifTags, within: Within): Exposure {
  const compensation = ratioOf(tags, 'ExposureBiasValue') ?? 0;
  return {
    focalLengthMm: within('Focal length', ratioOf(tags, 'FocalLength'), LENGTHS),
    focalLength35Mm: within('Focal length on 35 mm film', equivalentOf(tags), LENGTHS),
    fNumber: within('F-number', ratioOf(tags, 'FNumber') ?? apexAperture(tags), {
      least: 0.5,
      most: 128,
      unit: '',
    }),
    shutterS: within('Shutter time', ratioOf(tags, 'ExposureTime') ?? apexShutter(tags), {
      least: 1e-6,
      most: 3600,
      unit: ' s',
    }),
    iso: within('ISO', isoOf(tags), { least: 1, most: 10_000_000, unit: '' }),
    compensationStops: Math.abs(compensation) <= MOST_COMPENSATION ? compensation : null,
    flashFired: ((wholeOf(tags, 'Flash') ?? 0) & 1) === 1,
  };
}

/** ApertureValue is 2 log2 N. */
const apexAperture = (tags: ExifTags): number | null => {
  const value = ratioOf(tags, 'ApertureValue');
  return value === null ? null : 2 ** (value / 2);
};

/** ShutterSpeedValue is −log2 t. */
const apexShutter = (tags: ExifTags): number | null => {
  const value = ratioOf(tags, 'ShutterSpeedValue');
  return value === null ? null : 2 ** -value;
};

/** The first sensitivity field holds 16 bits: 65535 says that the figure stands in another. */
const isoOf = (tags: ExifTags): number | null => {
  const first = wholeOf(tags, 'ISOSpeedRatings');
  if (first !== null && first !== 65_535) return first;
  return (
    wholeOf(tags, 'RecommendedExposureIndex') ?? wholeOf(tags, 'StandardOutputSensitivity') ?? first
  );
};

/** 0 is how the standard writes ‘unknown’ here. */
const equivalentOf = (tags: ExifTags): number | null => {
  const value = wholeOf(tags, 'FocalLengthIn35mmFilm');
  return value === 0 ? null : value;
};
