import { inWrittenOrder } from './order-key.ts';
import { SHOOT_FORMAT, SHOOT_VERSION, type Light, type Setup, type Shoot, type Spot } from './shoot.ts';

/**
 * The shoot that opens on first start: a string quartet on a stretch of real coast. The people,
 * the booking, the skylines and the notes are invented.
 */
export function demoShoot(): Shoot {
  return {
    format: SHOOT_FORMAT,
    version: SHOOT_VERSION,
    id: 'demo',
    title: 'Quartet album cover',
    date: '2027-05-14',
    condition: 'broken-cloud',
    spots: inWrittenOrder({
      pier: {
        ...spot('Pier head', 45.6503, 13.7621, 3),
        framing: framing(300, 35, 6, 5.1),
        skyline: skyline([0, 1], [40, 4], [70, 9], [95, 7], [130, 4], [165, 1], [180, 0.4], [345, 0.4]),
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
        skyline: skyline([0, 6], [25, 5], [60, 12], [90, 14], [130, 8], [170, 2], [200, 0], [330, 0], [345, 3]),
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
        skyline: skyline([0, 5], [45, 14], [80, 16], [110, 11], [135, 3], [150, 0.5], [210, 0], [300, 0], [330, 3]),
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
        skyline: skyline([0, 30], [60, 34], [100, 26], [140, 14], [165, 9], [190, 7], [215, 9], [240, 22], [300, 34]),
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
    }),
    setups: inWrittenOrder({
      'two-violins': {
        ...setup('Two violins, wind', 'karst', '07:30', 45),
        holdStops: 1.5,
        people: 2,
        spacingM: 0.9,
        lights: inWrittenOrder({
          key: light('key', 'head-600', 'reflector', 2.2, 40),
          rim: { ...light('rim', 'head-400', 'long-throw', 3.2, -150), stops: -0.5 },
        }),
      },
      cello: {
        ...setup('Cello, side light', 'lighthouse', '16:30', 45),
        holdStops: 1,
        wishFNumber: 4,
        lights: inWrittenOrder({
          key: { ...light('key', 'head-600', 'octabox', 1.4, 60), diffuser: true },
        }),
      },
      viola: {
        ...setup('Viola, under the arch', 'arches', '18:20', 40),
        holdStops: 0.5,
        wishFNumber: 2.8,
        lights: inWrittenOrder({
          key: { ...light('key', 'head-600', 'octabox', 1.5, 35), diffuser: true, baffle: true },
          fill: { ...light('fill', 'head-400', 'umbrella', 2, -10), stops: -1.6 },
        }),
      },
      quartet: {
        ...setup('Four on the pier head', 'pier', '20:00', 40),
        holdStops: 2,
        people: 4,
        spacingM: 0.7,
        spreadLimitStops: 0.7,
        lights: inWrittenOrder({
          key: light('key', 'head-600', 'reflector', 2.9, 30),
          fill: { ...light('fill', 'head-400', 'umbrella', 2.8, 0), stops: -1.6 },
        }),
      },
    }),
  };
}

const spot = (
  name: string,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number,
): Omit<Spot, 'order' | 'framing'> => ({
  name,
  latitudeDeg,
  longitudeDeg,
  elevationM,
  zone: 'Europe/Rome',
  skyline: {},
  skylineOrigin: 'invented for the demo',
  groundReflectance: 0.2,
  groundNote: '',
  parkingNote: '',
  walkInMin: 5,
  permission: 'unknown',
  permissionNote: '',
  footTrafficNote: '',
  windNote: '',
  powerNote: '',
  hazardsNote: '',
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

const setup = (
  name: string,
  spotId: string,
  startClock: string,
  durationMin: number,
): Omit<Setup, 'order'> => ({
  name,
  spotId,
  startClock,
  durationMin,
  framing: null,
  patch: null,
  holdStops: 1,
  holdUnder: 'patch',
  unlitUnderStops: 2,
  people: 1,
  spacingM: 0.7,
  faceHeightM: 1.65,
  spreadLimitStops: 0.33,
  motion: 'posing',
  tripod: false,
  shaded: false,
  cameraId: 'camera',
  lensId: 'lens-24-70',
  wishFNumber: 5.6,
  lights: {},
  pinnedShutterS: null,
  pinnedFNumber: null,
  pinnedIso: null,
  pinnedFilterIds: null,
  clockPinned: false,
  holdPinned: false,
  framingPinned: false,
});

const light = (
  role: Light['role'],
  headId: string,
  modifierId: string,
  distanceM: number,
  angleDeg: number,
): Omit<Light, 'order'> => ({
  role,
  stops: 0,
  headId,
  headCount: 1,
  modifierId,
  diffuser: false,
  baffle: false,
  grid: false,
  gelId: null,
  distanceM,
  angleDeg,
  heightM: 2.3,
  pinnedPowerStops: null,
  distancePinned: false,
  modifierPinned: false,
});
