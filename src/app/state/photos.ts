import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { PhotoToAdd } from '../../core/plan/import-photos.ts';
import { wrapDeg360 } from '../../core/units/angle.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import {
  keepSmallPhoto,
  SMALL_TYPE,
  type SmallPhoto,
} from '../../exchange/photo/keep-small-photo.ts';
import { makesReading, photoEntry } from '../../exchange/photo/photo-entry.ts';
import type { PhotoFacts } from '../../exchange/photo/photo-facts.ts';
import { readPhoto } from '../../exchange/photo/read-photo.ts';
import { contentHash } from '../../storage/content-hash.ts';
import type { ShootRepository } from '../../storage/shoot-repository.ts';
import type { Atlas } from './atlas.ts';

/** A photo that was read and made small; nothing of it is kept yet. */
export type ReadyPhoto = PhotoFacts & {
  /** null: this browser could make none. */
  readonly small: SmallPhoto | null;
  /** Of the bytes that would be kept, or else of the file. */
  readonly contentHash: string;
};

export type PhotosRead = {
  readonly ready: readonly ReadyPhoto[];
  /** Sentences about files that were refused and photos without a picture. */
  readonly said: readonly string[];
};

type Reading = {
  readonly declination: Atlas['declination'];
  /** Where a photo without a position was taken, as far as is known. */
  readonly near: GeoPoint | null;
  readonly onProgress: (done: number) => void;
  readonly signal: AbortSignal;
};

/** Reads photos one after the other; what was read when the signal comes is the answer. */
export async function readPhotos(files: readonly File[], reading: Reading): Promise<PhotosRead> {
  const ready: ReadyPhoto[] = [];
  const said: string[] = [];
  for (const [done, file] of files.entries()) {
    if (reading.signal.aborted) break;
    const read = await readOne(file, reading, said);
    if (read.ok) ready.push(read.value);
    else said.push(read.problem);
    reading.onProgress(done + 1);
  }
  return { ready, said };
}

async function readOne(
  file: File,
  { declination, near }: Reading,
  said: string[],
): Promise<Result<ReadyPhoto, string>> {
  const read = await readPhoto(file);
  if (!read.ok) return read;
  const facts = await fromTrueNorth(read.value, declination, near);
  const small = await keepSmallPhoto(file, facts);
  if (!small.ok) said.push(small.problem);
  const bytes = small.ok ? small.value.bytes : new Uint8Array(await file.arrayBuffer());
  const hash = await contentHash(bytes);
  return hash === null
    ? fail(
        `${facts.name} cannot be kept: photos need a page opened over https or from this computer.`,
      )
    : ok({ ...facts, small: small.ok ? small.value : null, contentHash: hash });
}

/** A direction by the compass, turned by the declination where the photo was taken; without one it is left out and noted. */
async function fromTrueNorth(
  facts: PhotoFacts,
  declination: Atlas['declination'],
  near: GeoPoint | null,
): Promise<PhotoFacts> {
  const { bearingDeg, latitudeDeg, longitudeDeg, clockTime } = facts;
  if (bearingDeg === null || facts.bearingNorth === 'true') return facts;
  const found = await declinationFor(
    latitudeDeg === null || longitudeDeg === null ? near : { latitudeDeg, longitudeDeg },
    clockTime,
    declination,
  );
  const magnetic = `Direction by the compass ${Math.round(bearingDeg)}° from magnetic north`;
  const note = found.ok
    ? `${magnetic}, turned by ${signed(found.value)}° to true north.`
    : `${magnetic}, left out: ${found.problem}.`;
  return {
    ...facts,
    bearingDeg: found.ok ? wrapDeg360(tenth(bearingDeg + found.value)) : null,
    bearingNorth: 'true',
    notes: [...facts.notes, note],
  };
}

async function declinationFor(
  point: GeoPoint | null,
  clockTime: string | null,
  declination: Atlas['declination'],
): Promise<Result<number, string>> {
  if (point === null || clockTime === null)
    return fail('the declination needs the place and the date');
  const found = await declination(point, clockTime.slice(0, 10)).catch(() =>
    fail('the declination could not be loaded'),
  );
  return found.ok ? ok(found.value.declinationDeg) : found;
}

/** No declination is known better. */
const tenth = (angleDeg: number): number => Math.round(angleDeg * 10) / 10;

const signed = (angleDeg: number): string =>
  `${angleDeg < 0 ? '−' : '+'}${Math.abs(angleDeg).toFixed(1)}`;

/** Keeps the pictures on this device; the answer is what an edit adds to a spot in that zone. */
export async function keepPhotos(
  photos: readonly ReadyPhoto[],
  at: {
    readonly repository: Pick<ShootRepository, 'keepBlob'>;
    readonly zone: string;
    readonly newId: () => string;
  },
): Promise<Result<readonly PhotoToAdd[], string>> {
  const kept: PhotoToAdd[] = [];
  for (const photo of photos) {
    const { small } = photo;
    if (small !== null) {
      const done = await at.repository.keepBlob(small.bytes, SMALL_TYPE);
      if (!done.ok) return fail(done.problem.sentence);
    }
    const picture = {
      contentHash: photo.contentHash,
      widthPx: small?.widthPx ?? 0,
      heightPx: small?.heightPx ?? 0,
    };
    kept.push({
      photoId: at.newId(),
      photo: photoEntry(photo, picture, at.zone),
      readingId: makesReading(photo) ? at.newId() : null,
    });
  }
  return ok(kept);
}
