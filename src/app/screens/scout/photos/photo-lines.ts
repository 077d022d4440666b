import { formatAperture } from '../../../../core/exposure/aperture-scale.ts';
import { formatShutter } from '../../../../core/exposure/shutter-scale.ts';
import { groundVector } from '../../../../core/place/geodesy.ts';
import { photoEv100 } from '../../../../core/plan/photo-reading.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import type { Photo } from '../../../../core/plan/spot-schema.ts';
import { civilDateOf, clockTime, formatDate } from '../../../../core/units/civil-time.ts';
import { bearingText, evAsSettings, evText } from '../../../ui/figure-text.ts';

/** 'Fri 14 May 2027, 19:30' on the clocks of the zone. */
export const takenText = ({ takenAtMs }: Pick<Photo, 'takenAtMs'>, zone: string): string =>
  takenAtMs === null
    ? 'time unknown'
    : `${formatDate(civilDateOf(takenAtMs, zone), 'en-GB')}, ${clockTime(takenAtMs, zone)}`;

/** 'looks 300° WNW, taken 40 m from the spot's place' */
export function whereText(photo: Photo, spot: Spot): string {
  const { bearingDeg, latitudeDeg, longitudeDeg } = photo;
  const looks = bearingDeg === null ? 'direction unknown' : `looks ${bearingText(bearingDeg)}`;
  if (latitudeDeg === null || longitudeDeg === null) return `${looks}, place unknown`;
  return `${looks}, taken ${wayText(groundVector(spot, { latitudeDeg, longitudeDeg }).distanceM)}`;
}

const wayText = (distanceM: number): string => {
  if (distanceM < 1) return 'at the spot';
  return distanceM < 1000
    ? `${distanceM.toFixed(0)} m from the spot`
    : `${(distanceM / 1000).toFixed(1)} km from the spot`;
};

/** '24 mm, as 35 mm on 36 × 24 · f/8 · 1/250 · ISO 100', what is known of it. */
export function settingsText(photo: Photo): string {
  const { fNumber, shutterS, iso } = photo;
  const parts = [
    lensText(photo),
    fNumber === null ? '' : formatAperture(fNumber),
    shutterS === null ? '' : formatShutter(shutterS),
    iso === null ? '' : `ISO ${Math.round(iso)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'settings unknown' : parts.join(' · ');
}

function lensText({ focalLengthMm, focalLength35Mm }: Photo): string {
  const own = focalLengthMm === null ? '' : `${plain(focalLengthMm)} mm`;
  if (focalLength35Mm === null || focalLength35Mm === focalLengthMm) return own;
  const equivalent = `as ${plain(focalLength35Mm)} mm on 36 × 24`;
  return own === '' ? equivalent : `${own}, ${equivalent}`;
}

/** 'EV 13.0 = f/5.6 + 0.1 at 1/250, ISO 100, if the meter had it right'; null without an exposure. */
export function exposureText(photo: Photo): string | null {
  const ev100 = photoEv100(photo);
  return ev100 === null
    ? null
    : `${evText(ev100)} = ${evAsSettings(ev100)}, if the meter had it right`;
}

const plain = (value: number): string => String(Number(value.toFixed(1)));
