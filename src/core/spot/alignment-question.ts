import type { GeoPoint } from '../place/geo-point.ts';
import { isInsidePicture, type Framing, type PicturePoint } from '../sky/framing.ts';
import type { Skyline } from '../skyline/skyline.ts';
import { isCivilDate, isZone } from '../units/civil-time.ts';

export type SkyBody = 'sun' | 'moon';

/** Where in the picture sun or moon is to stand, and on which dates to look for it. */
export type AlignmentQuestion = {
  readonly body: SkyBody;
  readonly place: GeoPoint;
  /** IANA time zone that the dates are counted in. */
  readonly zone: string;
  /** 'YYYY-MM-DD', 1950 to 2049. */
  readonly fromDate: string;
  /** How many dates, 1 to 400. */
  readonly days: number;
  readonly framing: Framing;
  /** Where the disc's centre is wanted, inside the picture. */
  readonly wanted: PicturePoint;
  /** How far off the centre may stand, on the sky, 0.1 to 30. */
  readonly toleranceDeg: number;
  readonly skyline: Skyline;
};

export const ALIGNMENT_DAYS = 400;
/** In a minute the sky turns by 0.25°: under half of it a body may pass between two minutes. */
export const ALIGNMENT_TOLERANCE_DEG = { min: 0.1, max: 30, usual: 0.5 } as const;
const YEARS = { first: 1950, last: 2049 };

/** What cannot be used in a question, a sentence each. */
export function alignmentFaults(question: AlignmentQuestion): readonly string[] {
  const { fromDate, zone, days, wanted, toleranceDeg } = question;
  const { min, max } = ALIGNMENT_TOLERANCE_DEG;
  const faults = [
    isAlignmentDate(fromDate)
      ? null
      : `First date: found ‘${fromDate}’, expected a date of ${YEARS.first} to ${YEARS.last}, as 2027-05-14.`,
    isZone(zone) ? null : `Time zone: found ‘${zone}’, expected one as Europe/Rome.`,
    Number.isInteger(days) && days >= 1 && days <= ALIGNMENT_DAYS
      ? null
      : `Dates: found ${days}, expected 1 to ${ALIGNMENT_DAYS}.`,
    isInsidePicture(wanted)
      ? null
      : 'Point: found one outside the picture, expected −50 to 50 % from its centre.',
    toleranceDeg >= min && toleranceDeg <= max
      ? null
      : `Tolerance: found ${toleranceDeg}°, expected ${min}° to ${max}°.`,
  ];
  return faults.filter((fault) => fault !== null);
}

/** Sun and moon are good to 0.02° in these years. */
export const isAlignmentDate = (date: string): boolean =>
  isCivilDate(date) &&
  Number(date.slice(0, 4)) >= YEARS.first &&
  Number(date.slice(0, 4)) <= YEARS.last;
