export const SKY_CONDITIONS = [
  'clear',
  'haze',
  'broken-cloud',
  'bright-overcast',
  'heavy-overcast',
] as const;

export type SkyCondition = (typeof SKY_CONDITIONS)[number];

export type SkyConditionTraits = {
  /** Number of the standard general sky, 1 to 15. [iso15469] */
  readonly standardSky: number;
  /** Blends into the clear twilight shape around sunset; else keeps its standard sky through the night. */
  readonly takesTwilightShape: boolean;
  /** How the sun's beam arrives: whole, in the minutes between clouds, or not at all. */
  readonly beam: 'whole' | 'between-clouds' | 'none';
  /** Linke turbidity at air mass 2. [ineichenPerez2002] */
  readonly linkeTurbidity: number;
  /** Global illuminance over that of the cloudless sky: irradiance under oktas of cloud, times efficacies. */
  readonly cloudFactor: number;
};

/** Irradiance under cloud over that of the clear sky; cloud cover 0 to 8 oktas. [kastenCzeplak1980] */
export const cloudTransmittance = (oktas: number): number => 1 - 0.75 * (oktas / 8) ** 3.4;

/** Luminous efficacy of the global light over that of the clear sky. [perez1990] */
const BROKEN_OVER_CLEAR_EFFICACY = 1.04;
const OVERCAST_OVER_CLEAR_EFFICACY = 1.11;

export const SKY_CONDITION_TRAITS = {
  clear: {
    standardSky: 12,
    takesTwilightShape: true,
    beam: 'whole',
    linkeTurbidity: 3,
    cloudFactor: 1,
  },
  haze: {
    standardSky: 11,
    takesTwilightShape: true,
    beam: 'whole',
    linkeTurbidity: 5,
    cloudFactor: 1,
  },
  'broken-cloud': {
    standardSky: 7,
    takesTwilightShape: true,
    beam: 'between-clouds',
    linkeTurbidity: 3,
    cloudFactor: cloudTransmittance(6) * BROKEN_OVER_CLEAR_EFFICACY,
  },
  'bright-overcast': {
    standardSky: 4,
    takesTwilightShape: false,
    beam: 'none',
    linkeTurbidity: 3,
    cloudFactor: cloudTransmittance(7) * OVERCAST_OVER_CLEAR_EFFICACY,
  },
  'heavy-overcast': {
    standardSky: 3,
    takesTwilightShape: false,
    beam: 'none',
    linkeTurbidity: 3,
    cloudFactor: cloudTransmittance(8) * OVERCAST_OVER_CLEAR_EFFICACY,
  },
} as const satisfies Record<SkyCondition, SkyConditionTraits>;
