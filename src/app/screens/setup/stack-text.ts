import { densityFromStops } from '../../../core/exposure/lens-filter.ts';
import { USUAL_RING_MM, type ThreadFit } from '../../../core/exposure/stack-room.ts';
import type { Filter } from '../../../core/plan/kit.ts';
import type { GraduatedOnPicture, LensStack } from '../../../core/plan/lens-stack.ts';
import type { PolariserRange } from '../../../core/sky/polarised-sky.ts';
import { evText, signedTenths, tenths } from '../../ui/figure-text.ts';

/** 'In all 5 stops (1.5) from flash and ambient alike' */
export const evenText = (evenStops: number): string =>
  `In all ${tenths(evenStops)} stops (${densityFromStops(evenStops).toFixed(1)}) from flash and ambient alike`;

/** '131 mired bluer', '131 mired bluer, 0.7 stops of green less' */
export function shiftText({ miredShift, greenStops }: LensStack['figures']): string {
  const mired = Math.round(miredShift);
  const parts = [
    mired === 0 ? '' : `${Math.abs(mired)} mired ${mired > 0 ? 'warmer' : 'bluer'}`,
    Math.abs(greenStops) < 0.05
      ? ''
      : `${tenths(Math.abs(greenStops))} stops of green ${greenStops > 0 ? 'more' : 'less'}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'no colour of its own' : parts.join(', ');
}

/** Whether a stack cuts the corners; a rule of practice, so it says to look. */
export function depthText({ figures, roomMm }: LensStack): string {
  const depth = `${tenths(figures.depthMm)} mm of rings, room for about ${tenths(roomMm)} mm at this focal length`;
  return figures.depthMm > roomMm + 1e-6
    ? `${depth}: the corners are cut; use fewer or slimmer rings, or a longer lens`
    : `${depth} (a lens takes one ring of ${USUAL_RING_MM} mm at its shortest); look into the corners, stopped down`;
}

/** Null where it screws on as it is. */
export function threadText({ name }: Filter, fit: ThreadFit): string | null {
  switch (fit) {
    case 'fits':
      return null;
    case 'step-ring':
      return `${name}: wider than the lens, goes on by a step ring`;
    case 'cuts-corners':
      return `${name}: narrower than the lens, it would cut the corners off`;
    case 'not-known':
      return `${name}: its thread or the lens’s is not known, taken to fit`;
  }
}

const SURE_STOPS = 2;

/** How well the camera can still focus through the stack with the heads off. */
export function focusText({ faceEv, limitEv }: LensStack['focus']): string {
  if (faceEv === -Infinity)
    return 'No ambient on the face: focus by a torch or a modelling lamp, then leave the focus alone.';
  const left = faceEv - limitEv;
  const face = `The face behind the stack is at ${evText(faceEv)}, autofocus is stated down to ${evText(limitEv)}`;
  if (left < 0)
    return `${face}: ${tenths(-left)} too dark. Focus before the filters go on, or by a lamp.`;
  return left < SURE_STOPS
    ? `${face}: ${tenths(left)} left, it will hunt. Have a lamp ready.`
    : `${face}: ${tenths(left)} left, it works.`;
}

/** '−0.8 to +2.0 stops, counted as +0.6' */
export const polariserText = ({ leastStops, mostStops, middleStops }: PolariserRange): string =>
  mostStops < 0.05
    ? 'nothing beyond its even loss'
    : `${signedTenths(leastStops)} to ${signedTenths(mostStops)} stops beyond its even loss by how it is turned, counted as ${signedTenths(middleStops)}`;

/** Where the picture darkens: '12 % under the centre to 13 % over it' */
export function graduationText({ fromFraction, toFraction }: GraduatedOnPicture): string {
  return `from ${heightText(fromFraction)} up to ${heightText(toFraction)}`;
}

const heightText = (fraction: number): string => {
  const percent = Math.round(Math.abs(fraction) * 100);
  return percent === 0
    ? 'the centre'
    : `${percent} % ${fraction > 0 ? 'over' : 'under'} the centre`;
};

/** What the graduated filter does to the highest head. */
export function graduatedFaceText({ faceStops, crownStops }: GraduatedOnPicture): string {
  if (crownStops < 0.05) return 'the heads are clear of it';
  if (faceStops < 0.05)
    return `the face is clear of it, the top of the head loses ${tenths(crownStops)} stops`;
  return `the head crosses it: the face loses ${tenths(faceStops)} stops, which the flash has to make up, the hair ${tenths(crownStops)}`;
}
