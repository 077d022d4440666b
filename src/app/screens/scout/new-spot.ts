import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { orderKeyAtEnd } from '../../../core/plan/order-key.ts';
import { SPOT_DEFAULTS } from '../../../core/plan/spot-defaults.ts';
import type { Shoot, Spot } from '../../../core/plan/shoot.ts';
import type { ShootFraming } from '../../../core/plan/spot-schema.ts';
import { sunEvents } from '../../../core/sun-moon/sun-events.ts';
import { sunPosition } from '../../../core/sun-moon/sun-position.ts';

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
    name: known.name ?? numberedName(shoot),
    latitudeDeg: point.latitudeDeg,
    longitudeDeg: point.longitudeDeg,
    elevationM,
    zone,
    framing: known.framing ?? {
      ...FIRST_FRAMING,
      bearingDeg: sunsetBearingDeg(shoot.date, zone, point),
    },
  };
}

const FIRST_FRAMING = {
  tiltDeg: 6,
  focalLengthMm: 35,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
  orientation: 'landscape',
  cameraDistanceM: 4,
  cameraHeightM: 1.4,
} as const;

/** Whole degrees; west where the sun does not set. */
function sunsetBearingDeg(date: string, zone: string, place: GeoPoint): number {
  const { sunsetMs } = sunEvents({ date, zone, place });
  return sunsetMs === null ? 270 : Math.round(sunPosition(sunsetMs, place).azimuthDeg) % 360;
}

function numberedName(shoot: Shoot): string {
  const names = new Set(Object.values(shoot.spots).map(({ name }) => name));
  let number = names.size + 1;
  while (names.has(`Spot ${number}`)) number += 1;
  return `Spot ${number}`;
}
