import type { Edit } from './edits.ts';
import type { Shoot } from './shoot.ts';
import type { Photo, Reading } from './spot-schema.ts';

export const addPhoto =
  (spotId: string, photoId: string, photo: Photo): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot !== undefined) spot.photos[photoId] = { ...photo };
  };

export const editPhoto =
  (spotId: string, photoId: string, fields: Partial<Photo>): Edit<Shoot> =>
  (shoot) => {
    const photo = shoot.spots[spotId]?.photos[photoId];
    if (photo !== undefined) Object.assign(photo, fields);
  };

/** A photo goes with the readings it made. */
export const removePhoto =
  (spotId: string, photoId: string): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot === undefined) return;
    delete spot.photos[photoId];
    for (const [readingId, reading] of Object.entries(spot.readings))
      if (reading.photoId === photoId) delete spot.readings[readingId];
  };

export const addReading =
  (spotId: string, readingId: string, reading: Reading): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot !== undefined) spot.readings[readingId] = { ...reading };
  };

export const removeReading =
  (spotId: string, readingId: string): Edit<Shoot> =>
  (shoot) => {
    const spot = shoot.spots[spotId];
    if (spot !== undefined) delete spot.readings[readingId];
  };
