import { ratioFromStops, stopsFromRatio } from '../units/stops.ts';
import { flashFNumberSquared, type FlashSource } from './guide-number.ts';

/**
 * Brightest sky, EV at ISO 100 at the hold's reference, at which lights that add on one side still
 * meet that side's stops at full power and sync speed:
 * log2((S/t + 2^ambient) / 2^stops) − hold, S = Σ GN² 2^−loss / (d² + r²). [iso1230] [iso2720]
 * No lights and no ambient give −∞.
 */
export const reach = (side: {
  readonly lights: readonly FlashSource[];
  readonly syncShutterS: number;
  readonly holdStops: number;
  readonly keyStops: number;
  /** On the face the lights are on; −Infinity: none. */
  readonly ambientOnSubjectEv: number;
}): number => {
  let squares = 0;
  for (const light of side.lights) squares += flashFNumberSquared(light);
  return (
    stopsFromRatio(squares / side.syncShutterS + ratioFromStops(side.ambientOnSubjectEv)) -
    side.keyStops -
    side.holdStops
  );
};
