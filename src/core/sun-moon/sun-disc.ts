/** Half the sun's disc: 16′, as rise and set take it. [usnoRiseSet] */
export const SUN_RADIUS_DEG = 0.27;
