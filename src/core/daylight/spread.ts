import type { SkyCondition } from './sky-condition.ts';

/** Half the band of eight of ten one-minute values of the global light. Common practice. */
const GLOBAL_STOPS = {
  clear: 0.3,
  haze: 0.7,
  'broken-cloud': 1,
  'bright-overcast': 0.7,
  'heavy-overcast': 1,
} as const satisfies Record<SkyCondition, number>;

/** What a direction in the sky adds to it. Common practice. */
const DIRECTION_STOPS = {
  clear: { frame: 0.3, patch: 0.3 },
  haze: { frame: 0.4, patch: 0.4 },
  'broken-cloud': { frame: 0.7, patch: 1.2 },
  'bright-overcast': { frame: 0.3, patch: 0.3 },
  'heavy-overcast': { frame: 0.5, patch: 0.5 },
} as const satisfies Record<SkyCondition, { readonly frame: number; readonly patch: number }>;

const LOW_CLEAR_SUN = { belowDeg: 10, stops: 0.5 } as const;
const TWILIGHT = { belowDeg: -2, atLeastStops: 0.7 } as const;
const NEAR_SUN = { withinDeg: 20, atLeastStops: 0.7 } as const;
const SUNSET = { atOrBelowDeg: 1, atLeastStops: 1 } as const;

/** ± stops round the global horizontal illuminance. Common practice. */
export const globalSpreadStops = (sky: {
  readonly condition: SkyCondition;
  readonly sunTrueAltitudeDeg: number;
}): number => {
  const { condition, sunTrueAltitudeDeg } = sky;
  const stops =
    condition === 'clear' && sunTrueAltitudeDeg < LOW_CLEAR_SUN.belowDeg
      ? LOW_CLEAR_SUN.stops
      : GLOBAL_STOPS[condition];
  return sunTrueAltitudeDeg < TWILIGHT.belowDeg ? Math.max(stops, TWILIGHT.atLeastStops) : stops;
};

/** ± stops round the luminance of the sky in a frame, or of a patch of it. Common practice. */
export const frameSpreadStops = (part: {
  readonly condition: SkyCondition;
  readonly sunTrueAltitudeDeg: number;
  /** From the sun to the nearest point of the frame or patch. */
  readonly angleFromSunDeg: number;
  readonly of: 'frame' | 'patch';
}): number => {
  const directionStops = Math.max(
    DIRECTION_STOPS[part.condition][part.of],
    part.angleFromSunDeg <= NEAR_SUN.withinDeg ? NEAR_SUN.atLeastStops : 0,
    part.sunTrueAltitudeDeg <= SUNSET.atOrBelowDeg ? SUNSET.atLeastStops : 0,
  );
  return Math.hypot(globalSpreadStops(part), directionStops);
};
