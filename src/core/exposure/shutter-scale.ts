import { nearestClick, type DialStep } from './dial-scale.ts';

/** Shutter names in third stops, fastest first; the first is exactly 2^−13 s. [iso516] */
const THIRD_STOP_NAMES = [
  '1/8000', '1/6400', '1/5000', '1/4000', '1/3200', '1/2500', '1/2000', '1/1600', '1/1250',
  '1/1000', '1/800', '1/640', '1/500', '1/400', '1/320', '1/250', '1/200', '1/160', '1/125',
  '1/100', '1/80', '1/60', '1/50', '1/40', '1/30', '1/25', '1/20', '1/15', '1/13', '1/10', '1/8',
  '1/6', '1/5', '1/4', '0.3 s', '0.4 s', '0.5 s', '0.6 s', '0.8 s', '1 s', '1.3 s', '1.6 s', '2 s',
  '2.5 s', '3.2 s', '4 s', '5 s', '6 s', '8 s', '10 s', '13 s', '15 s', '20 s', '25 s', '30 s',
] as const; // prettier-ignore

/** Shutter names in half stops, fastest first. [iso516] */
const HALF_STOP_NAMES = [
  '1/8000', '1/6000', '1/4000', '1/3000', '1/2000', '1/1500', '1/1000', '1/750', '1/500', '1/350',
  '1/250', '1/180', '1/125', '1/90', '1/60', '1/45', '1/30', '1/20', '1/15', '1/10', '1/8', '1/6',
  '1/4', '0.3 s', '0.5 s', '0.7 s', '1 s', '1.5 s', '2 s', '3 s', '4 s', '6 s', '8 s', '10 s',
  '15 s', '20 s', '30 s',
] as const; // prettier-ignore

const FIRST_NAME_STOPS = -13;

/** Stops of exposure against one second: 1/2 s is −1. [apex1961] */
export const stopsFromShutter = (shutterS: number): number => Math.log2(shutterS);

export const shutterFromStops = (shutterStops: number): number => 2 ** shutterStops;

/** The name on the dial nearest to a time: 1/256 s is '1/250', 0.5 s is '0.5 s'. */
export const formatShutter = (shutterS: number, step: DialStep = 'third'): string => {
  const names: readonly string[] = step === 'half' ? HALF_STOP_NAMES : THIRD_STOP_NAMES;
  const name = names[nearestClick(stopsFromShutter(shutterS) - FIRST_NAME_STOPS, step)];
  if (name !== undefined) return name;
  return shutterS < 1 ? `1/${Math.round(1 / shutterS / 100) * 100}` : `${Math.round(shutterS)} s`;
};
