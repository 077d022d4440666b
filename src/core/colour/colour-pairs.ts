import { kelvinFromMired, miredFromKelvin } from './mired.ts';

export type OwnedGel = { readonly id: string; readonly miredShift: number; readonly stops: number };

export type ColourPair = {
  /** In the order in which they are taped on. */
  readonly gelIds: readonly string[];
  readonly gelMiredShift: number;
  readonly gelStops: number;
  /** What the camera is set to, so that the gelled flash is neutral. */
  readonly whiteBalanceKelvin: number;
  /** How the ambient then looks against neutral: positive is bluer. */
  readonly ambientBluerMired: number;
  /** How far that lies from what was asked. */
  readonly missMired: number;
};

const MOST_GELS = 2;

/**
 * Which gels on the flash, and which white balance, leave the skin neutral and make the ambient so
 * many mired bluer (negative: warmer). Mired shifts add; a pair is kept where the white balance can
 * be set. Nearest first, of equals the one that costs less. [cie15]
 */
export function colourPairs(asked: {
  readonly flashKelvin: number;
  readonly ambientKelvin: number;
  readonly bluerMired: number;
  readonly gels: readonly OwnedGel[];
  readonly settable: { readonly minKelvin: number; readonly maxKelvin: number };
}): readonly ColourPair[] {
  const { flashKelvin, ambientKelvin, bluerMired, gels, settable } = asked;
  const flashMired = miredFromKelvin(flashKelvin);
  const ambientMired = miredFromKelvin(ambientKelvin);
  return combinations(gels)
    .map((taped): ColourPair => {
      const gelMiredShift = sum(taped.map(({ miredShift }) => miredShift));
      const ambientBluer = flashMired + gelMiredShift - ambientMired;
      return {
        gelIds: taped.map(({ id }) => id),
        gelMiredShift,
        gelStops: sum(taped.map(({ stops }) => stops)),
        whiteBalanceKelvin: kelvinFromMired(flashMired + gelMiredShift),
        ambientBluerMired: ambientBluer,
        missMired: ambientBluer - bluerMired,
      };
    })
    .filter(
      ({ whiteBalanceKelvin }) =>
        whiteBalanceKelvin >= settable.minKelvin && whiteBalanceKelvin <= settable.maxKelvin,
    )
    .toSorted(
      (first, second) =>
        Math.abs(first.missMired) - Math.abs(second.missMired) || first.gelStops - second.gelStops,
    );
}

/** None, each alone, and each pair, one kind twice included. */
function combinations(gels: readonly OwnedGel[]): readonly (readonly OwnedGel[])[] {
  let all: readonly (readonly OwnedGel[])[] = [[]];
  for (let taped = 0; taped < MOST_GELS; taped += 1)
    all = [
      ...all,
      ...all
        .filter((stack) => stack.length === taped)
        .flatMap((stack) => {
          const from = stack.length === 0 ? 0 : gels.findIndex((gel) => gel === stack.at(-1));
          return gels.slice(from).map((gel) => [...stack, gel]);
        }),
    ];
  return all;
}

const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0);
