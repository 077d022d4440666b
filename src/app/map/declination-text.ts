import { wrapDeg360 } from '../../core/units/angle.ts';

type Shown = {
  readonly declinationDeg: number;
  readonly spreadDeg: number;
  readonly decimalYear: number;
  readonly model: string;
};

/** What a compass shows for a bearing from true north: '296.4°'. */
export const compassText = (bearingDeg: number, { declinationDeg }: Shown): string =>
  `${wrapDeg360(Math.round((bearingDeg - declinationDeg) * 10) / 10).toFixed(1)}°`;

/** 'declination 3.6° east ± 0.5°, World Magnetic Model 2025 for 2027.4' */
export const declinationText = ({
  declinationDeg,
  spreadDeg,
  decimalYear,
  model,
}: Shown): string => {
  const size = Math.abs(declinationDeg).toFixed(1);
  const side = size === '0.0' ? '' : declinationDeg < 0 ? ' west' : ' east';
  return `declination ${size}°${side} ± ${spreadDeg.toFixed(1)}°, ${model} for ${decimalYear.toFixed(1)}`;
};
