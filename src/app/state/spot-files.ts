import { together, type Edit } from '../../core/plan/edits.ts';
import { importEdit, type SpotFromWaypoint } from '../../core/plan/import-edit.ts';
import {
  addPhotos,
  isSamePhoto,
  photoWaypoints,
  type PhotoToAdd,
} from '../../core/plan/import-photos.ts';
import { planImport, type ImportRow } from '../../core/plan/import-spots.ts';
import type { Shoot } from '../../core/plan/shoot.ts';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { readWaypointFile, readWaypointText } from '../../exchange/waypoints/read-waypoints.ts';
import type { ReadWaypoints, Skipped } from '../../exchange/waypoints/waypoint-format.ts';
import type { ShootRepository } from '../../storage/shoot-repository.ts';
import type { Atlas } from './atlas.ts';
import { keepPhotos, readPhotos, type ReadyPhoto } from './photos.ts';

/** One place that was found, with what taking it in would do. */
export type FoundPlace = ImportRow & { readonly photos: readonly ReadyPhoto[] };

/** What files or a text hold; nothing has changed yet. */
export type BroughtIn = {
  readonly places: readonly FoundPlace[];
  /** Photos that do not say where they were taken. */
  readonly loosePhotos: readonly ReadyPhoto[];
  readonly skipped: readonly Skipped[];
  readonly notes: readonly string[];
  /** Sentences about files that could not be read at all. */
  readonly refused: readonly string[];
};

type Looking = {
  readonly shoot: Shoot;
  readonly near: GeoPoint | null;
  readonly declination: Atlas['declination'];
  readonly onProgress: (done: number) => void;
  readonly signal: AbortSignal;
};

const PHOTO_NAME = /\.(jpe?g|heic|heif|webp|png|tiff?)$/i;

const isPhoto = ({ name, type }: File): boolean =>
  PHOTO_NAME.test(name) || type.startsWith('image/');

/** Waypoint files and photos in any mixture. */
export async function lookAtFiles(files: readonly File[], looking: Looking): Promise<BroughtIn> {
  const pictures = files.filter(isPhoto);
  const others = files.filter((file) => !isPhoto(file));
  const readings: (readonly [name: string, reading: ReadWaypoints])[] = [];
  for (const [done, file] of others.entries()) {
    if (looking.signal.aborted) break;
    readings.push([file.name, await readWaypointFile(file, looking)]);
    looking.onProgress(done + 1);
  }
  const photos = await readPhotos(pictures, {
    ...looking,
    onProgress: (done) => looking.onProgress(others.length + done),
  });
  return gathered(looking.shoot, readings, photos.ready, photos.said);
}

/** Coordinates, links and codes, a place a line, or the text of a waypoint file. */
export function lookAtText(
  text: string,
  { shoot, near }: Pick<Looking, 'shoot' | 'near'>,
): BroughtIn {
  return gathered(shoot, [['the text', readWaypointText(text, { near })]], [], []);
}

function gathered(
  shoot: Shoot,
  readings: readonly (readonly [name: string, reading: ReadWaypoints])[],
  photos: readonly ReadyPhoto[],
  said: readonly string[],
): BroughtIn {
  const read = readings.flatMap(([, reading]) => (reading.ok ? [reading.value] : []));
  const fromFiles = read.flatMap(({ waypoints }) => waypoints);
  const fromPhotos = photoWaypoints(photos);
  const { rows } = planImport(shoot, [...fromFiles, ...fromPhotos]);
  return {
    places: rows.map((row, at) => ({
      ...row,
      photos: fromPhotos[at - fromFiles.length]?.photos ?? [],
    })),
    loosePhotos: photos.filter(
      ({ latitudeDeg, longitudeDeg }) => latitudeDeg === null || longitudeDeg === null,
    ),
    skipped: read.flatMap(({ skipped }) => skipped),
    notes: read.flatMap(({ notes }) => notes),
    refused: [
      ...readings.flatMap(([name, reading]) => (reading.ok ? [] : [`${name}: ${reading.problem}`])),
      ...said,
    ],
  };
}

/** What the user chose of it. */
export type Taken = {
  readonly places: readonly FoundPlace[];
  /** Where photos without a place go; null leaves them out. */
  readonly loosePhotosTo: string | null;
};

export type TakingIn = {
  readonly edit: Edit<Shoot>;
  readonly addedSpotIds: readonly string[];
  readonly addedPhotos: number;
};

type Means = {
  readonly repository: Pick<ShootRepository, 'keepBlob'>;
  readonly surroundings: Atlas['surroundings'];
  readonly elevationOf: (found: Awaited<ReturnType<Atlas['surroundings']>> | null) => number;
  readonly newId: () => string;
};

/** Keeps the photos and makes one edit of everything, so that one undo takes it back. */
export async function takeIn(
  shoot: Shoot,
  brought: BroughtIn,
  taken: Taken,
  means: Means,
): Promise<Result<TakingIn, string>> {
  const additions: SpotFromWaypoint[] = [];
  const edits: Edit<Shoot>[] = [];
  const toSpots = new Map<string, readonly ReadyPhoto[]>();
  let addedPhotos = 0;

  const collect = (spotId: string, photos: readonly ReadyPhoto[]): void =>
    void toSpots.set(spotId, [...(toSpots.get(spotId) ?? []), ...photos]);

  const put = async (
    spotId: string,
    zone: string,
    photos: readonly ReadyPhoto[],
  ): Promise<string | null> => {
    const kept = await keepPhotos(photos, { ...means, zone });
    if (!kept.ok) return kept.problem;
    const spot = shoot.spots[spotId] ?? { photos: {}, readings: {} };
    const fresh = withoutKnown(kept.value, spot);
    addedPhotos += fresh.length;
    if (fresh.length > 0) edits.push(addPhotos(spotId, spot, fresh));
    return null;
  };

  for (const { waypoint, spotId, photos } of taken.places) {
    const there = photos.length > 0 && spotId !== null ? shoot.spots[spotId] : undefined;
    if (there !== undefined && spotId !== null) {
      collect(spotId, photos);
      continue;
    }
    const { latitudeDeg, longitudeDeg } = waypoint;
    const found = await means.surroundings({ latitudeDeg, longitudeDeg }).catch(() => null);
    const added = {
      waypoint,
      spotId: means.newId(),
      zone: found?.zone.zone ?? Object.values(shoot.spots)[0]?.zone ?? 'Etc/UTC',
      elevationM: means.elevationOf(found),
    };
    additions.push(added);
    const problem = await put(added.spotId, added.zone, photos);
    if (problem !== null) return fail(problem);
  }
  if (taken.loosePhotosTo !== null) collect(taken.loosePhotosTo, brought.loosePhotos);
  for (const [spotId, photos] of toSpots) {
    const there = shoot.spots[spotId];
    const problem = there === undefined ? null : await put(spotId, there.zone, photos);
    if (problem !== null) return fail(problem);
  }
  return ok({
    edit: together(importEdit(shoot, additions), ...edits),
    addedSpotIds: additions.map(({ spotId }) => spotId),
    addedPhotos,
  });
}

const withoutKnown = (
  photos: readonly PhotoToAdd[],
  spot: Pick<Shoot['spots'][string], 'photos'>,
): readonly PhotoToAdd[] =>
  photos.filter(({ photo }, at) => {
    const before = [...Object.values(spot.photos), ...photos.slice(0, at).map((one) => one.photo)];
    return !before.some((one) => isSamePhoto(one, photo));
  });
