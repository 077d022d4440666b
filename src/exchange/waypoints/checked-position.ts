import type { GeoPoint } from '../../core/place/geo-point.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';

/** A number as a file writes it, or NaN; null where nothing is written. */
export const writtenNumber = (text: string | null): number | null => {
  const plain = (text ?? '').trim();
  if (plain === '') return null;
  return NUMBER.test(plain) ? Number(plain) : Number.NaN;
};

const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;

/** A place on the globe, or what was found and expected instead. `found`: as the file has them. */
export function checkedPosition(
  latitudeDeg: number | null,
  longitudeDeg: number | null,
  found: readonly [latitude: string, longitude: string],
): Result<GeoPoint, string> {
  if (latitudeDeg === null || longitudeDeg === null)
    return fail(
      `Found no ${latitudeDeg === null ? 'latitude' : 'longitude'}; expected latitude and longitude in degrees.`,
    );
  if (!Number.isFinite(latitudeDeg) || !Number.isFinite(longitudeDeg)) {
    const [what, text] = Number.isFinite(latitudeDeg)
      ? ['longitude', found[1]]
      : ['latitude', found[0]];
    return fail(`Found “${text.slice(0, 40)}” as ${what}; expected a number of degrees.`);
  }
  const northFits = Math.abs(latitudeDeg) <= 90;
  const eastFits = Math.abs(longitudeDeg) <= 180;
  if (northFits && eastFits) return ok({ latitudeDeg, longitudeDeg });
  if (Math.abs(latitudeDeg) > 360 || Math.abs(longitudeDeg) > 360)
    return fail(
      `Found ${latitudeDeg}, ${longitudeDeg}, which looks like metres of a map projection; expected degrees of WGS 84.`,
    );
  if (northFits)
    return fail(`Found a longitude of ${longitudeDeg}°; expected −180° to 180°, east positive.`);
  return fail(
    `Found a latitude of ${latitudeDeg}°; expected −90° to 90°, north positive.${Math.abs(longitudeDeg) <= 90 ? ' Latitude and longitude may be swapped.' : ''}`,
  );
}
