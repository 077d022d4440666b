import type { PhotoKind } from './photo-kind.ts';

/** What a camera wrote into a photo; null where it wrote nothing, or nothing that can be. */
export type PhotoFacts = {
  /** The file's name, at most 120 characters. */
  readonly name: string;
  readonly kind: PhotoKind;
  /** Of the picture in the file, before it is turned upright. */
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  /** What the camera's clock showed, 'YYYY-MM-DDTHH:mm:ss'. */
  readonly clockTime: string | null;
  /** Epoch milliseconds, known only where the file says how far that clock is from UTC. */
  readonly takenAtMs: number | null;
  readonly latitudeDeg: number | null;
  readonly longitudeDeg: number | null;
  /** Above sea level. */
  readonly elevationM: number | null;
  /** Where the camera looked, 0 ≤ a < 360, clockwise from the north of `bearingNorth`. */
  readonly bearingDeg: number | null;
  readonly bearingNorth: 'true' | 'magnetic';
  readonly focalLengthMm: number | null;
  readonly focalLength35Mm: number | null;
  readonly fNumber: number | null;
  readonly shutterS: number | null;
  readonly iso: number | null;
  /** Exposure over (positive) or under what the meter asked for. */
  readonly compensationStops: number | null;
  readonly flashFired: boolean;
  /** How the stored rows and columns stand, 1 to 8; 1 upright. Exif 2.32, tag 0x0112. */
  readonly orientation: number;
  readonly colourProfile: string | null;
  /** Sentences about what was left out or taken for granted. */
  readonly notes: readonly string[];
};
