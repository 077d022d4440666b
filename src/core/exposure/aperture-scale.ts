import { nearestClick, type DialStep } from './dial-scale.ts';

/** Engraved f-numbers in third stops from f/0.7, whose exact value is 2^(−3/6). [iso517] */
const THIRD_STOP_NAMES = [
  '0.7', '0.8', '0.9', '1', '1.1', '1.2', '1.4', '1.6', '1.8', '2', '2.2', '2.5', '2.8', '3.2',
  '3.5', '4', '4.5', '5', '5.6', '6.3', '7.1', '8', '9', '10', '11', '13', '14', '16', '18', '20',
  '22', '25', '29', '32', '36', '40', '45', '51', '57', '64', '72', '80', '90',
] as const; // prettier-ignore

/** Engraved f-numbers in half stops from f/0.7. [iso517] */
const HALF_STOP_NAMES = [
  '0.7', '0.8', '1', '1.2', '1.4', '1.7', '2', '2.4', '2.8', '3.3', '4', '4.8', '5.6', '6.7', '8',
  '9.5', '11', '13', '16', '19', '22', '27', '32', '38', '45', '54', '64', '76', '90',
] as const; // prettier-ignore

const FIRST_NAME_STOPS = -1;

/** Aperture value Av, stops: f/1 is 0, f/1.4 is 1. [apex1961] */
export const stopsFromFNumber = (fNumber: number): number => 2 * Math.log2(fNumber);

export const fNumberFromStops = (apertureStops: number): number => 2 ** (apertureStops / 2);

/** The name on the ring nearest to an f-number: 5.657 is 'f/5.6'. */
export const formatAperture = (fNumber: number, step: DialStep = 'third'): string => {
  const names: readonly string[] = step === 'half' ? HALF_STOP_NAMES : THIRD_STOP_NAMES;
  const name = names[nearestClick(stopsFromFNumber(fNumber) - FIRST_NAME_STOPS, step)];
  return `f/${name ?? String(Number(fNumber.toPrecision(2)))}`;
};

/** As a flash meter shows it: the full stop below and tenths of a stop, 'f/8 + 0.3'. */
export const formatMeterAperture = (fNumber: number): string => {
  const tenths = Math.round(stopsFromFNumber(fNumber) * 10);
  const fullStop = Math.floor(tenths / 10);
  const rest = tenths - fullStop * 10;
  const name = formatAperture(fNumberFromStops(fullStop));
  return rest === 0 ? name : `${name} + 0.${rest}`;
};

/** A number that is a name on the ring as the value it stands for: 22 is 22.63; others as they are. */
export const exactFNumber = (fNumber: number): number => {
  const click = THIRD_STOP_NAMES.findIndex((name) => Number(name) === fNumber);
  return click < 0 ? fNumber : fNumberFromStops(FIRST_NAME_STOPS + click / 3);
};
