import type { GeoPoint } from '../../core/place/geo-point.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';

export type OwnPosition = {
  readonly point: GeoPoint;
  /** The device lies within this of the point, 95 times in 100 by its own account. */
  readonly accuracyM: number;
};

const WAIT_MS = 20_000;
/** A position taken a moment ago is as good as a new one. */
const OLDEST_MS = 10_000;

/**
 * Asks once where this device is, or says in a sentence why that is not known. `geolocation` is
 * the browser's; undefined where it has none, as on a page without a secure address.
 */
export const askOwnPosition = (
  geolocation: Pick<Geolocation, 'getCurrentPosition'> | undefined,
): Promise<Result<OwnPosition, string>> =>
  new Promise((resolve) => {
    if (geolocation === undefined)
      return resolve(fail('This browser gives no position here: it needs an https address.'));
    geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) =>
        resolve(
          ok({
            point: { latitudeDeg: latitude, longitudeDeg: longitude },
            accuracyM: accuracy,
          }),
        ),
      ({ code }) => resolve(fail(PROBLEMS[code] ?? UNKNOWN)),
      { enableHighAccuracy: true, timeout: WAIT_MS, maximumAge: OLDEST_MS },
    );
  });

const UNKNOWN = 'This device does not know where it is just now.';

/** By the codes of the Geolocation API. */
const PROBLEMS: Readonly<Record<number, string>> = {
  1: 'The position was refused. The browser’s settings for this page can allow it.',
  2: UNKNOWN,
  3: `No position within ${WAIT_MS / 1000} seconds. Under open sky it goes faster.`,
};
