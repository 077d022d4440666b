import * as Astronomy from 'astronomy-engine';

type Place = {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM?: number;
};

/** Sun or moon by astronomy-engine 2.1 (VSOP87, NOVAS), airless and topocentric. */
export const referenceDirection = (
  body: 'Sun' | 'Moon',
  instantMs: number,
  place: Place,
): { readonly azimuthDeg: number; readonly altitudeDeg: number; readonly distanceKm: number } => {
  const observer = observerAt(place);
  const date = new Date(instantMs);
  const equator = Astronomy.Equator(bodyOf(body), date, observer, true, true);
  const horizon = Astronomy.Horizon(date, observer, equator.ra, equator.dec);
  return {
    azimuthDeg: horizon.azimuth,
    altitudeDeg: horizon.altitude,
    distanceKm: equator.dist * Astronomy.KM_PER_AU,
  };
};

/** First instant after the start at which the body's centre passes the airless altitude. */
export const referenceCrossingMs = (
  body: 'Sun' | 'Moon',
  crossing: {
    readonly place: Place;
    readonly direction: 'rising' | 'falling';
    readonly altitudeDeg: number;
    readonly startMs: number;
    readonly days: number;
  },
): number | null =>
  Astronomy.SearchAltitude(
    bodyOf(body),
    observerAt(crossing.place),
    crossing.direction === 'rising' ? 1 : -1,
    new Date(crossing.startMs),
    crossing.days,
    crossing.altitudeDeg,
  )?.date.getTime() ?? null;

/** First upper transit of the sun after the start. */
export const referenceNoonMs = (place: Place, startMs: number): number =>
  Astronomy.SearchHourAngle(
    Astronomy.Body.Sun,
    observerAt(place),
    0,
    new Date(startMs),
  ).time.date.getTime();

/** First rise or set of the moon's upper limb after the start, within so many days. */
export const referenceMoonLimbMs = (
  direction: 'rising' | 'falling',
  {
    place,
    startMs,
    days,
  }: { readonly place: Place; readonly startMs: number; readonly days: number },
): number | null =>
  Astronomy.SearchRiseSet(
    Astronomy.Body.Moon,
    observerAt(place),
    direction === 'rising' ? 1 : -1,
    new Date(startMs),
    days,
  )?.date.getTime() ?? null;

export const referenceMoonPhase = (
  instantMs: number,
): { readonly illuminatedFraction: number; readonly phaseAngleDeg: number } => {
  const lit = Astronomy.Illumination(Astronomy.Body.Moon, new Date(instantMs));
  return { illuminatedFraction: lit.phase_fraction, phaseAngleDeg: lit.phase_angle };
};

/** Angle between two directions by the chord, exact where they nearly meet. */
export const separationDeg = (
  one: { readonly azimuthDeg: number; readonly altitudeDeg: number },
  other: { readonly azimuthDeg: number; readonly altitudeDeg: number },
): number => {
  const [a, b] = [one, other].map(({ azimuthDeg, altitudeDeg }) => {
    const [azimuth, altitude] = [(azimuthDeg * Math.PI) / 180, (altitudeDeg * Math.PI) / 180];
    return [
      Math.cos(altitude) * Math.cos(azimuth),
      Math.cos(altitude) * Math.sin(azimuth),
      Math.sin(altitude),
    ];
  });
  const chord = Math.hypot(...[0, 1, 2].map((axis) => (a?.[axis] ?? 0) - (b?.[axis] ?? 0)));
  return (2 * Math.asin(chord / 2) * 180) / Math.PI;
};

const observerAt = (place: Place): Astronomy.Observer =>
  new Astronomy.Observer(place.latitudeDeg, place.longitudeDeg, place.elevationM ?? 0);

const bodyOf = (body: 'Sun' | 'Moon'): Astronomy.Body => Astronomy.Body[body];
