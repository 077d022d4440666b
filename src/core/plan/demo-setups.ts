import { inWrittenOrder } from './order-key.ts';
import { LIGHT_DEFAULTS, SETUP_DEFAULTS } from './setup-defaults.ts';
import type { Light, Setup } from './setup-schema.ts';

/** The pictures of the demo shoot. Invented. */
export const demoSetups = (): Record<string, Setup> =>
  inWrittenOrder({
    'two-violins': {
      ...setup('Two violins, wind', 'karst', '07:30', 45),
      holdStops: 1.5,
      people: 2,
      spacingM: 0.9,
      lights: inWrittenOrder({
        key: light('key', 'head-600', 'reflector', 2.6, 45),
        rim: { ...light('rim', 'head-400', 'long-throw', 3.8, -125), stops: -0.5 },
      }),
    },
    cello: {
      ...setup('Cello, side light', 'lighthouse', '16:30', 45),
      holdStops: 1,
      wishFNumber: 4,
      lights: inWrittenOrder({
        key: { ...light('key', 'head-600', 'octabox', 2.1, 70), diffuser: true },
      }),
    },
    viola: {
      ...setup('Viola, under the arch', 'arches', '18:20', 40),
      holdStops: 0.5,
      wishFNumber: 2.8,
      lights: inWrittenOrder({
        key: { ...light('key', 'head-600', 'octabox', 2.8, 65), diffuser: true },
        fill: { ...light('fill', 'head-400', 'umbrella', 3.8, -10), stops: -2, heightM: 2.7 },
      }),
    },
    quartet: {
      ...setup('Four on the pier head', 'pier', '20:00', 40),
      holdStops: 2,
      people: 4,
      spacingM: 0.7,
      spreadLimitStops: 0.7,
      lights: inWrittenOrder({
        key: light('key', 'head-600', 'reflector', 4.2, 35),
        fill: { ...light('fill', 'head-400', 'umbrella', 4.4, 0), stops: -2, heightM: 2.9 },
      }),
    },
  });

const setup = (
  name: string,
  spotId: string,
  startClock: string,
  durationMin: number,
): Omit<Setup, 'order'> => ({
  ...SETUP_DEFAULTS,
  name,
  spotId,
  startClock,
  durationMin,
  cameraId: 'camera',
  lensId: 'lens-24-70',
});

const light = (
  role: Light['role'],
  headId: string,
  modifierId: string,
  distanceM: number,
  angleDeg: number,
): Omit<Light, 'order'> => ({
  ...LIGHT_DEFAULTS,
  role,
  headId,
  modifierId,
  distanceM,
  angleDeg,
});
