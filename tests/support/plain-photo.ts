import type { Photo } from '../../src/core/plan/spot-schema.ts';

/** A photo of which nothing is known but its picture. */
export const plainPhoto: Photo = {
  order: 'n',
  name: 'scout-01.jpg',
  contentHash: 'a'.repeat(64),
  widthPx: 1600,
  heightPx: 1067,
  takenAtMs: null,
  latitudeDeg: null,
  longitudeDeg: null,
  bearingDeg: null,
  focalLengthMm: null,
  focalLength35Mm: null,
  fNumber: null,
  shutterS: null,
  iso: null,
  note: '',
};
