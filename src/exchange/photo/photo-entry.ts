import type { Photo } from '../../core/plan/spot-schema.ts';
import type { PhotoFacts } from './photo-facts.ts';
import { photoTakenAtMs } from './photo-time.ts';

/** The picture as it is kept: under its hash, or not at all; then the hash is the original's and both sides are 0. */
export type KeptPicture = Pick<Photo, 'contentHash' | 'widthPx' | 'heightPx'>;

/** A photo as its spot keeps it. What is to be known of its figures becomes its first note. */
export const photoEntry = (
  facts: PhotoFacts,
  picture: KeptPicture,
  zone: string,
): Omit<Photo, 'order'> => ({
  name: facts.name,
  contentHash: picture.contentHash,
  widthPx: picture.widthPx,
  heightPx: picture.heightPx,
  takenAtMs: photoTakenAtMs(facts, zone),
  latitudeDeg: facts.latitudeDeg,
  longitudeDeg: facts.longitudeDeg,
  bearingDeg: facts.bearingDeg,
  focalLengthMm: facts.focalLengthMm,
  focalLength35Mm: facts.focalLength35Mm,
  fNumber: facts.fNumber,
  shutterS: facts.shutterS,
  iso: facts.iso,
  note: [...facts.notes, ...exposureNotes(facts), ...profileNotes(facts)].join('\n'),
});

/** The exposure of a photo with flash is no reading of the place. */
export const makesReading = ({ flashFired, fNumber, shutterS, iso }: PhotoFacts): boolean =>
  !flashFired && fNumber !== null && shutterS !== null && iso !== null;

const LEAST_STOPS = 0.05;

/** What the figures alone do not tell. */
const exposureNotes = ({ flashFired, compensationStops }: PhotoFacts): readonly string[] => {
  const stops = compensationStops ?? 0;
  return [
    ...(flashFired ? ['The flash fired: its exposure says little of the daylight.'] : []),
    ...(Math.abs(stops) < LEAST_STOPS
      ? []
      : [
          `Exposed ${Math.abs(stops).toFixed(1)} ${stops > 0 ? 'over' : 'under'} what the meter asked for.`,
        ]),
  ];
};

/** The kept copy is sRGB; another profile was turned into it by the browser, if it knew it. */
const profileNotes = ({ colourProfile }: PhotoFacts): readonly string[] =>
  colourProfile === null || /srgb/i.test(colourProfile)
    ? []
    : [
        `Colour profile “${colourProfile.slice(0, 60)}”: its colours are what this browser made of them.`,
      ];
