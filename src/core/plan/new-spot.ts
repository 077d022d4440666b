import type { GeoPoint } from '../place/geo-point.ts';
import { sunEvents } from '../sun-moon/sun-events.ts';
import { sunPosition } from '../sun-moon/sun-position.ts';
import { orderKeyAtEnd } from './order-key.ts';
import type { Shoot, Spot } from './shoot.ts';
import { SPOT_DEFAULTS } from './spot-defaults.ts';
import type { ShootFraming } from './spot-schema.ts';

type Known = {
  readonly point: GeoPoint;
  /** Null: numbered. */
  readonly name: string | null;
  readonly zone: string;
  readonly elevationM: number;
  /** The framing to begin with; null: 35 mm full frame towards the sunset. */
  readonly framing: ShootFraming | null;
};

/** A spot as it is added: flat skyline, ground of 20 %, nothing known of access. */
export function newSpot(shoot: Shoot, known: Known): Spot {
  const { point, zone, elevationM } = known;
  return {
    ...SPOT_DEFAULTS,
    order: orderKeyAtEnd(shoot.spots),
    name: known.name ?? freeSpotName(spotNames(shoot)),
    latitudeDeg: point.latitudeDeg,
    longitudeDeg: point.longitudeDeg,
    elevationM,
    zone,
    framing: known.framing ?? firstFraming(sunsetBearingDeg(shoot.date, zone, point)),
  };
}

/** 35 mm full frame, across, a little up. */
export const firstFraming = (bearingDeg: number): ShootFraming => ({
  bearingDeg,
  tiltDeg: 6,
  focalLengthMm: 35,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
  orientation: 'landscape',
  cameraDistanceM: 4,
  cameraHeightM: 1.4,
});

/** Whole degrees; west where the sun does not set. */
export function sunsetBearingDeg(date: string, zone: string, place: GeoPoint): number {
  const { sunsetMs } = sunEvents({ date, zone, place });
  return sunsetMs === null ? 270 : Math.round(sunPosition(sunsetMs, place).azimuthDeg) % 360;
}

export const spotNames = (shoot: Pick<Shoot, 'spots'>): ReadonlySet<string> =>
  new Set(Object.values(shoot.spots).map(({ name }) => name));

/** 'Spot 5': the first number that is free. */
export function freeSpotName(taken: ReadonlySet<string>): string {
  let number = taken.size + 1;
  while (taken.has(`Spot ${number}`)) number += 1;
  return `Spot ${number}`;
}
