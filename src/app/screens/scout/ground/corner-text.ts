import type { Corner } from '../../../../core/skyline/obstacle.ts';

/** '45.650300, 13.757100': latitude first, to a decimetre. */
export const cornerText = ([longitudeDeg, latitudeDeg]: Corner): string =>
  `${latitudeDeg.toFixed(6)}, ${longitudeDeg.toFixed(6)}`.replaceAll('-', '−');
