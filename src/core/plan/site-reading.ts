import { decodeSrgb } from '../colour/srgb.ts';
import { cameraEv } from '../exposure/camera-settings.ts';
import { fNumberFromStops, stopsFromFNumber } from '../exposure/aperture-scale.ts';
import { DIAL_STEP_STOPS } from '../exposure/dial-scale.ts';
import { isoFromStops, stopsFromIso } from '../exposure/iso-scale.ts';
import { shutterFromStops, stopsFromShutter } from '../exposure/shutter-scale.ts';
import { fail, ok, type Result } from '../units/result.ts';

/** What a reading on site was taken of. */
export type ReadOf =
  /** Reflected, of the sky: the setup's patch, the whole sky in its frame, or a direction. */
  | {
      readonly kind: 'sky';
      readonly toward:
        | { readonly kind: 'patch' | 'frame' }
        | {
            readonly kind: 'direction';
            /** Clockwise from true north. */
            readonly bearingDeg: number;
            /** Above the level. */
            readonly tiltDeg: number;
          };
    }
  /** With the dome at the subject's face, no flash. */
  | {
      readonly kind: 'incident';
      readonly toward:
        | { readonly kind: 'camera' | 'sky' }
        | { readonly kind: 'light'; readonly lightId: string };
      /** Whether the sun shone between the clouds; null: not said. */
      readonly sun: 'out' | 'hidden' | null;
    }
  /** One light alone at the face, its dome towards it. */
  | {
      readonly kind: 'flash';
      readonly lightId: string;
      /** 0 full, −1 half. */
      readonly powerStops: number;
      /** What the meter shows without the flash at the same ISO and shutter; null: nothing. */
      readonly ambientFNumber: number | null;
    };

type Exposure = { readonly shutterS: number; readonly fNumber: number; readonly iso: number };
/** Everything before the lens together, stops. */
type LensFilters = { readonly filterStops: number };

/** What was read, as it was noted. */
export type ReadValue =
  | { readonly kind: 'ev'; readonly ev100: number }
  /** The camera's own meter asked for these. */
  | ({ readonly kind: 'settings' } & Exposure & LensFilters)
  /** A full f-number and tenths of a stop over it, 'f/16 + 0.4'. */
  | ({ readonly kind: 'meter'; readonly tenths: number } & Exposure)
  /** A frame at the recipe's settings came out so much brighter than it should, heads off, or that light alone. */
  | {
      readonly kind: 'frame-off';
      readonly overStops: number;
      /** The shift that was already in what the recipe was made from. */
      readonly appliedStops: number;
    }
  /** A frame without flash, and the value of the patch tapped in it, 0 to 255. */
  | ({ readonly kind: 'photo'; readonly patchValue: number } & Exposure & LensFilters);

export type SiteReading = {
  readonly id: string;
  readonly atMs: number;
  readonly of: ReadOf;
  readonly value: ReadValue;
  /** The user has looked again at one that is far off and stands by it. */
  readonly confirmed: boolean;
};

/** EV at ISO 100; for a flash the aperture value at ISO 100, log2 N². */
export type ReadLevel = {
  readonly levelStops: number;
  /** ± of the way in; eight of ten lie inside. */
  readonly spreadStops: number;
};

/** How well each way in is read: a meter's tenth and its aim, thirds of a dial, a picture judged by eye, a tone curve that is not known. Common practice. [lightingPractice] */
const READ_SPREAD_STOPS = {
  ev: 0.2,
  meter: 0.2,
  settings: 0.3,
  'frame-off': 0.3,
  photo: 0.5,
} as const satisfies Record<ReadValue['kind'], number>;

export const readSpreadStops = (value: ReadValue): number => READ_SPREAD_STOPS[value.kind];

/** Darker or brighter than any scene or flash. */
const LEAST_STOPS = -12;
const MOST_STOPS = 26;

/** What a value says by itself; a frame that came out too bright says something only beside its prediction. */
export function readLevel(
  of: ReadOf,
  value: Exclude<ReadValue, { readonly kind: 'frame-off' }>,
): Result<ReadLevel, { readonly sentence: string }> {
  const sentence = unreadable(of, value);
  if (sentence !== null) return fail({ sentence });
  const levelStops = levelOf(of, value);
  if (!(levelStops >= LEAST_STOPS && levelStops <= MOST_STOPS))
    return fail({
      sentence: `The reading comes to EV ${shownStops(levelStops)}; expected ${shownStops(LEAST_STOPS)} to ${MOST_STOPS}.`,
    });
  return ok({ levelStops, spreadStops: readSpreadStops(value) });
}

const shownStops = (stops: number): string =>
  Number.isFinite(stops) ? stops.toFixed(1).replace('-', '−') : String(stops);

function levelOf(of: ReadOf, value: Exclude<ReadValue, { readonly kind: 'frame-off' }>): number {
  switch (value.kind) {
    case 'ev':
      return value.ev100;
    case 'settings':
      return cameraEv({ ...onDial(value), filterStops: value.filterStops });
    case 'meter': {
      const set = onDial(value);
      const aperture = stopsFromFNumber(set.fNumber) + value.tenths / 10;
      if (of.kind !== 'flash')
        return aperture - stopsFromShutter(set.shutterS) - stopsFromIso(set.iso);
      const ambient = of.ambientFNumber ?? 0;
      return Math.log2(2 ** aperture - ambient ** 2) - stopsFromIso(set.iso);
    }
    case 'photo':
      return (
        cameraEv({ ...onDial(value), filterStops: value.filterStops }) +
        Math.log2(decodeSrgb(value.patchValue / 255) / MID_GREY)
      );
  }
}

/** Linear light of mid-grey. [iso2720] */
const MID_GREY = 0.18;

/** A nominal name (1/250, f/11, ISO 160) as the exact value it stands for. [iso516] [iso517] [iso12232] */
const onDial = ({ shutterS, fNumber, iso }: Exposure): Exposure => ({
  shutterS: shutterFromStops(exactStops(stopsFromShutter(shutterS))),
  fNumber: fNumberFromStops(exactStops(stopsFromFNumber(fNumber))),
  iso: isoFromStops(exactStops(stopsFromIso(iso))),
});

/** The nearest of the third and half stops that is no farther off than rounding makes a name. */
function exactStops(stops: number): number {
  const [third, half] = [DIAL_STEP_STOPS.third, DIAL_STEP_STOPS.half].map(
    (step) => Math.round(stops / step) * step,
  ) as [number, number];
  const nearest = Math.abs(third - stops) <= Math.abs(half - stops) ? third : half;
  return Math.abs(nearest - stops) <= NAME_STOPS ? nearest : stops;
}

const NAME_STOPS = 0.15;

const CLIPPED_VALUE = 250;
const NOISE_VALUE = 8;

function unreadable(of: ReadOf, value: ReadValue): string | null {
  if (of.kind === 'flash') {
    if (value.kind === 'ev' || value.kind === 'settings' || value.kind === 'photo')
      return 'A flash is read with a flash meter, or as a frame that came out too bright or too dark.';
    if (!(of.powerStops <= 0))
      return `The light’s power: expected 0 (full) or less, found ${of.powerStops}.`;
  }
  if (value.kind === 'ev' || value.kind === 'frame-off') return null;
  for (const [name, figure] of [
    ['shutter', value.shutterS],
    ['f-number', value.fNumber],
    ['ISO', value.iso],
  ] as const)
    if (!(figure > 0 && figure < Infinity))
      return `The reading’s ${name}: expected more than 0, found ${figure}.`;
  if (value.kind === 'meter') {
    if (!(value.tenths >= 0 && value.tenths < 10))
      return `Tenths of a stop: expected 0 to 9, found ${value.tenths}.`;
    const shown = value.fNumber * 2 ** (value.tenths / 20);
    if (of.kind === 'flash' && !((of.ambientFNumber ?? 0) >= 0 && (of.ambientFNumber ?? 0) < shown))
      return `Ambient alone read f/${of.ambientFNumber}; with the flash it must read more than that, found f/${shown.toFixed(1)}.`;
    return null;
  }
  if (!(value.filterStops >= 0 && value.filterStops <= 25))
    return `Filters on the lens: expected 0 to 25 stops, found ${value.filterStops}.`;
  if (value.kind === 'photo') {
    if (!(value.patchValue >= 0 && value.patchValue <= 255))
      return `The patch’s value: expected 0 to 255, found ${value.patchValue}.`;
    if (value.patchValue > CLIPPED_VALUE)
      return 'The patch is clipped: how bright it is cannot be seen. Take a darker frame.';
    if (value.patchValue < NOISE_VALUE)
      return 'The patch is black: how dark it is cannot be seen. Take a brighter frame.';
  }
  return null;
}
