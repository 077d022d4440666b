import type { FacePlace } from '../../../core/plan/face-places.ts';
import type { FaceSpread } from '../../../core/plan/row-of-faces.ts';
import type { SetupSource } from '../../../core/plan/setup-source.ts';
import type { InWind } from '../../../core/plan/stand-in-wind.ts';
import type { SeenLight } from '../../../core/colour/seen-light.ts';
import { BOUNCE_SPREAD_STOPS } from '../../../core/strobe/bounce.ts';
import { ASSUMED_BEAM_DEG } from '../../../core/strobe/beam.ts';
import { softness } from '../../../core/strobe/softness.ts';
import { signedTenths, spreadText, tenths } from '../../ui/figure-text.ts';

/** 'left end, back row', 'second from the left' */
export function placeText({ inRow, rowPeople, row, rows }: FacePlace): string {
  const across =
    rowPeople === 1
      ? 'the middle'
      : inRow === 0
        ? 'left end'
        : inRow === rowPeople - 1
          ? 'right end'
          : 2 * inRow === rowPeople - 1
            ? 'the middle'
            : 2 * inRow < rowPeople - 1
              ? `${nthText(inRow)} from the left`
              : `${nthText(rowPeople - 1 - inRow)} from the right`;
  if (rows === 1) return across;
  const which = row === 0 ? 'front row' : row === rows - 1 ? 'back row' : `${nthText(row)} row`;
  return `${across}, ${which}`;
}

const nthText = (place: number): string =>
  ['first', 'second', 'third', 'fourth', 'fifth'][place] ?? `${place + 1}th`;

/** 'best lit the right end, +0.4, least the left end, −0.5: they differ by 0.9' */
export const spreadOfFacesText = ({ nearest, farthest, spreadStops }: FaceSpread): string =>
  `best lit ${placeText(nearest)}, ${signedTenths(nearest.stops)}, least ${placeText(farthest)}, ${signedTenths(farthest.stops)}: they differ by ${tenths(spreadStops)}`;

/** 'soft, 24° wide' */
export function softnessText({ output, light }: Pick<SetupSource, 'output' | 'light'>): string {
  const { angleDeg, word } = softness({
    widthM: output.sourceDiameterM,
    distanceM: light.distanceM,
  });
  return `${word}, ${angleDeg < 10 ? tenths(angleDeg) : Math.round(angleDeg)}° wide as the subject sees it`;
}

/** '2.4 stops under the same head aimed from there ± 0.6; the patch is 1.2 m wide' */
export function bounceText(source: SetupSource): string | null {
  const { bounce, light, path } = source;
  if (bounce === null || path === null) return null;
  const caught =
    bounce.caughtShare > 0.99
      ? ''
      : `; the panel catches ${Math.round(100 * bounce.caughtShare)} % of the beam`;
  const heads = light.headCount > 1 ? `, ${light.headCount} heads on it` : '';
  return `${tenths(-bounce.againstDirectStops)} stops under the same head aimed straight from there ${spreadText(BOUNCE_SPREAD_STOPS)}${heads}; the beam lights ${tenths(bounce.patchDiameterM)} m across${caught}`;
}

export const assumedBeamText = `The modifier’s beam is not stated: ${ASSUMED_BEAM_DEG}° is taken. Its own figure goes in under Kit.`;

/** 'turns skin 34 mired warmer and greener' */
export function tintText({ warmerMired, greener }: SeenLight): string {
  const mired = Math.round(Math.abs(warmerMired));
  const parts = [
    mired < 1 ? '' : `${mired} mired ${warmerMired > 0 ? 'warmer' : 'bluer'}`,
    Math.abs(greener) < 1
      ? ''
      : `${Math.round(Math.abs(greener))} tint ${greener > 0 ? 'greener' : 'more magenta'}`,
  ].filter((part) => part !== '');
  return `The surface tints skin: ${parts.join(' and ')} than the head’s own light.`;
}

/** What the wind asks of the stand; never a weight without its wind. */
export function windText(wind: InWind): string {
  switch (wind.kind) {
    case 'no-stand':
      return 'no stand: somebody holds it';
    case 'wind-not-known':
      return 'what to weigh it down with depends on the gusts, which are not known: type them under Wind';
    case 'above-limit':
      return `not put up in gusts of ${tenths(wind.gustMS)} m/s: its limit is ${tenths(wind.maxGustMS)} m/s`;
    case 'ballast':
      return wind.ballastKg === 0
        ? `its own weight holds it in gusts up to ${tenths(wind.gustMS)} m/s, estimate, not an approval`
        : `at least ${Math.ceil(wind.ballastKg)} kg on the windward leg for gusts up to ${tenths(wind.gustMS)} m/s, estimate, not an approval`;
  }
}
