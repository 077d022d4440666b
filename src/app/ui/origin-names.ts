import type { FigureOrigin } from '../../core/strobe/head.ts';

/** Where a head's figure comes from. */
export const ORIGIN_NAMES: Readonly<Record<FigureOrigin, string>> = {
  metered: 'one metered shot of yours',
  'guide-number': 'rated guide number',
  'watt-seconds': 'watt-seconds, a guess',
};
