import { inWrittenOrder } from './order-key.ts';
import type { Spot } from './shoot.ts';
import { SPOT_DEFAULTS } from './spot-defaults.ts';

/** The spots of the demo shoot: places of a real coast, their skylines and notes invented. */
export const demoSpots = (): Record<string, Spot> =>
  inWrittenOrder({
    pier: {
      ...spot('Pier head', 45.6503, 13.7621, 3),
      framing: framing(300, 35, 6, 5.1),
      skyline: skyline(
        [0, 1],
        [40, 4],
        [70, 9],
        [95, 7],
        [130, 4],
        [165, 1],
        [180, 0.4],
        [345, 0.4],
      ),
      groundReflectance: 0.35,
      groundNote: 'Pale stone, wet at the edge',
      parkingNote: 'On the quay, paid',
      walkInMin: 4,
      permission: 'asked',
      permissionNote: 'Port office',
      footTrafficNote: 'Walkers until dark; keep a passage open',
      windNote: 'Open to wind from every side',
      hazardsNote: 'Water on three sides: nobody steps back without a spotter',
    },
    lighthouse: {
      ...spot('Lighthouse terrace', 45.6753, 13.7573, 64),
      framing: framing(25, 50, 8, 4.2),
      skyline: skyline(
        [0, 6],
        [25, 5],
        [60, 12],
        [90, 14],
        [130, 8],
        [170, 2],
        [200, 0],
        [330, 0],
        [345, 3],
      ),
      groundReflectance: 0.3,
      groundNote: 'Light concrete slabs',
      parkingNote: 'Street, 300 m',
      walkInMin: 8,
      permission: 'granted',
      permissionNote: 'Until 18:00',
      footTrafficNote: 'Quiet on weekdays',
      windNote: 'Gusts round the tower',
      hazardsNote: 'Steps without a rail on the sea side',
    },
    karst: {
      ...spot('Karst edge', 45.6852, 13.7796, 318),
      framing: framing(150, 50, 10, 5),
      skyline: skyline(
        [0, 5],
        [45, 14],
        [80, 16],
        [110, 11],
        [135, 3],
        [150, 0.5],
        [210, 0],
        [300, 0],
        [330, 3],
      ),
      groundReflectance: 0.25,
      groundNote: 'Grey limestone and dry grass',
      parkingNote: 'Lay-by, 2 cars',
      walkInMin: 12,
      permission: 'unknown',
      footTrafficNote: 'Hikers at weekends',
      windNote: 'Exposed; the north-easterly falls over the edge',
      hazardsNote: 'Unfenced edge: mark a line three metres back',
    },
    arches: {
      ...spot('Warehouse arches', 45.6557, 13.7652, 4),
      framing: framing(190, 35, 14, 4.5),
      skyline: skyline(
        [0, 30],
        [60, 34],
        [100, 26],
        [140, 14],
        [165, 9],
        [190, 7],
        [215, 9],
        [240, 22],
        [300, 34],
      ),
      groundReflectance: 0.2,
      groundNote: 'Worn asphalt, brick walls',
      parkingNote: 'At the gate',
      walkInMin: 3,
      permission: 'asked',
      permissionNote: 'Site office',
      footTrafficNote: 'Empty after 18:00',
      windNote: 'Sheltered',
      powerNote: 'One socket inside the gate',
      hazardsNote: 'Forklifts until 17:30',
    },
  });

const spot = (
  name: string,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number,
): Omit<Spot, 'order' | 'framing'> => ({
  ...SPOT_DEFAULTS,
  name,
  latitudeDeg,
  longitudeDeg,
  elevationM,
  zone: 'Europe/Rome',
  skylineOrigin: 'invented for the demo',
});

const framing = (
  bearingDeg: number,
  focalLengthMm: number,
  tiltDeg: number,
  cameraDistanceM: number,
): Spot['framing'] => ({
  bearingDeg,
  tiltDeg,
  focalLengthMm,
  sensorWidthMm: 36,
  sensorHeightMm: 24,
  orientation: 'landscape',
  cameraDistanceM,
  cameraHeightM: 1.4,
});

const skyline = (...points: readonly (readonly [azimuthDeg: number, altitudeDeg: number])[]) =>
  Object.fromEntries(
    points.map(([azimuthDeg, altitudeDeg]) => [`at-${azimuthDeg}`, { azimuthDeg, altitudeDeg }]),
  );
