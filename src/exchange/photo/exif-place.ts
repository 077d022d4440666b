import { ratioOf, ratiosOf, textOf, wholeOf, type ExifTags } from './exif-values.ts';
import type { Within } from './exif-within.ts';
import type { PhotoFacts } from './photo-facts.ts';

type Place = Pick<
  PhotoFacts,
  'latitudeDeg' | 'longitudeDeg' | 'elevationM' | 'bearingDeg' | 'bearingNorth'
>;

const NOWHERE = { latitudeDeg: null, longitudeDeg: null };

export const placeOf = (tags: ExifTags, within: Within, notes: string[]): Place => ({
  ...positionOf(tags, within, notes),
  elevationM: within('Elevation', elevationOf(tags), { least: -450, most: 9000, unit: ' m' }),
  ...directionOf(tags, within, notes),
});

function positionOf(
  tags: ExifTags,
  within: Within,
  notes: string[],
): Pick<Place, 'latitudeDeg' | 'longitudeDeg'> {
  const latitude = signedAngle(tags, 'GPSLatitude', { N: 1, S: -1 });
  const longitude = signedAngle(tags, 'GPSLongitude', { E: 1, W: -1 });
  if (latitude === null && longitude === null) return NOWHERE;
  const latitudeDeg = within('Latitude', latitude ?? Number.NaN, {
    least: -90,
    most: 90,
    unit: '°',
  });
  const longitudeDeg = within('Longitude', longitude ?? Number.NaN, {
    least: -180,
    most: 180,
    unit: '°',
  });
  if (latitudeDeg === null || longitudeDeg === null) return NOWHERE;
  if (latitudeDeg !== 0 || longitudeDeg !== 0) return { latitudeDeg, longitudeDeg };
  notes.push('Position: found 0°, 0°, which devices write that know none; left out.');
  return NOWHERE;
}

/** Degrees, minutes and seconds with the letter of their side; null where there are none, NaN where they make no angle. */
function signedAngle(
  tags: ExifTags,
  name: string,
  signs: Readonly<Record<string, number>>,
): number | null {
  const parts = ratiosOf(tags, name);
  if (parts === null) return null;
  const sign = signs[textOf(tags, `${name}Ref`) ?? ''] ?? Number.NaN;
  const [degrees = Number.NaN, minutes = 0, seconds = 0] = parts;
  const angleDeg = sign * (degrees + minutes / 60 + seconds / 3600);
  return angleDeg === 0 ? 0 : angleDeg;
}

const elevationOf = (tags: ExifTags): number | null => {
  const heightM = ratioOf(tags, 'GPSAltitude');
  return heightM !== null && wholeOf(tags, 'GPSAltitudeRef') === 1 ? 0 - heightM : heightM;
};

const FULL_TURN_DEG = 360;

function directionOf(
  tags: ExifTags,
  within: Within,
  notes: string[],
): Pick<Place, 'bearingDeg' | 'bearingNorth'> {
  const bearingDeg = within('Direction', ratioOf(tags, 'GPSImgDirection'), {
    least: 0,
    most: FULL_TURN_DEG,
    unit: '°',
  });
  const north = textOf(tags, 'GPSImgDirectionRef');
  if (bearingDeg !== null && north !== 'T' && north !== 'M')
    notes.push('The file does not say from which north its direction counts: taken as true north.');
  return {
    bearingDeg: bearingDeg === FULL_TURN_DEG ? 0 : bearingDeg,
    bearingNorth: north === 'M' ? 'magnetic' : 'true',
  };
}
