import { fail, ok, type Result } from '../../core/units/result.ts';

export type HgtCorner = {
  /** Of the sample in the south-west corner. */
  readonly southDeg: number;
  readonly westDeg: number;
};

const NAME = /^([ns])(\d{1,2})([ew])(\d{1,3})(?!\d)[^/\\]*\.hgt$/i;

/** The corner that an elevation tile's file name states, such as N46E007.hgt; what is packed is named inside. */
export function hgtCorner(fileName: string): Result<HgtCorner, string> {
  const [, northOrSouth = '', latitude = '', eastOrWest = '', longitude = ''] =
    NAME.exec(fileName) ?? [];
  const southDeg = Number(latitude) * (northOrSouth.toLowerCase() === 's' ? -1 : 1);
  const westDeg = Number(longitude) * (eastOrWest.toLowerCase() === 'w' ? -1 : 1);
  if (northOrSouth === '')
    return fail(
      `${fileName}: expected a name that gives the south-west corner, such as N46E007.hgt, found ${fileName}.`,
    );
  if (southDeg < -90 || southDeg > 89 || westDeg < -180 || westDeg > 179)
    return fail(
      `${fileName}: expected a corner from S90 to N89 and W180 to E179, found ${latitude}° ${northOrSouth.toUpperCase()}, ${longitude}° ${eastOrWest.toUpperCase()}.`,
    );
  return ok({ southDeg: southDeg + 0, westDeg: westDeg + 0 });
}
