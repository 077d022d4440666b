import type { GeoPoint } from '../core/place/geo-point.ts';
import { dayOfYear } from '../core/units/civil-time.ts';
import { fail, ok, type Result } from '../core/units/result.ts';

export type Declination = {
  /** From true to magnetic north, east positive, −180 to 180. */
  readonly declinationDeg: number;
  /** Eight of ten places lie within ± this of it, iron close to the compass left out. */
  readonly spreadDeg: number;
  /** 2027.4 */
  readonly decimalYear: number;
  readonly model: string;
};

const MODEL = 'World Magnetic Model 2025';
const FIRST_YEAR = 2025;
const END_YEAR = 2030;

/** Weaker horizontal fields leave a compass without a direction, or with a doubtful one. */
const BLACKOUT_NT = 2000;
const CAUTION_NT = 6000;

/** Standard error of the model's declination: √(0.26² + (5417 nT / H)²) degrees. */
const CONSTANT_ERROR_DEG = 0.26;
const ERROR_NT_DEG = 5417;
/** Half the width that holds eight of ten of a normal distribution, in standard errors. */
const EIGHT_OF_TEN = 1.2816;

/**
 * Magnetic declination on a date 'YYYY-MM-DD', or in a sentence why there is none. Zones and error
 * model: A. Chulliat and others, The US/UK World Magnetic Model for 2025–2030, technical report,
 * NOAA NCEI and British Geological Survey, 2025.
 */
export const declinationAt = async (
  point: GeoPoint,
  date: string,
): Promise<Result<Declination, string>> => {
  const year = Number(date.slice(0, 4));
  const day = dayOfYear(date);
  if (!Number.isFinite(day))
    return fail(`found ‘${date}’, expected a date for the magnetic declination`);
  if (year < FIRST_YEAR || year >= END_YEAR)
    return fail(`${MODEL} covers ${FIRST_YEAR} to ${END_YEAR - 1}, not ${year}: no declination`);
  const decimalYear = year + (day - 0.5) / dayOfYear(`${year}-12-31`);
  const { latitudeDeg, longitudeDeg, elevationM = 0 } = point;
  const { magneticField } = await import('magvar');
  const { declination, h } = magneticField(
    latitudeDeg,
    longitudeDeg,
    elevationM / 1000,
    decimalYear,
  );
  if (h < BLACKOUT_NT)
    return fail('so close to the magnetic pole a compass shows no direction: no declination');
  if (h < CAUTION_NT)
    return fail('this near the magnetic pole a compass cannot be relied on: no declination');
  return ok({
    declinationDeg: declination,
    spreadDeg: EIGHT_OF_TEN * Math.hypot(CONSTANT_ERROR_DEG, ERROR_NT_DEG / h),
    decimalYear,
    model: MODEL,
  });
};
