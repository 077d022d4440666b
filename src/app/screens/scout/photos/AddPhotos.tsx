import { useRef, useState, type ReactNode } from 'react';

import { addPhotos, isSamePhoto } from '../../../../core/plan/import-photos.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { useAtlas } from '../../../state/atlas.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { keepPhotos, readPhotos } from '../../../state/photos.ts';
import { useServices } from '../../../state/services.ts';
import { say } from '../../../state/view.ts';

type AddPhotosProps = { readonly spotId: string; readonly spot: Spot };
type Progress = { readonly done: number; readonly of: number };

/** Adds photos of this device to the spot, wherever they were taken. */
export function AddPhotos({ spotId, spot }: AddPhotosProps): ReactNode {
  const edit = useEditShoot();
  const { declination } = useAtlas();
  const { repository, newId } = useServices();
  const [progress, setProgress] = useState<Progress | null>(null);
  const [said, setSaid] = useState<readonly string[]>([]);
  const stop = useRef<AbortController | null>(null);

  const add = async (files: readonly File[]): Promise<void> => {
    const stopping = new AbortController();
    stop.current = stopping;
    setProgress({ done: 0, of: files.length });
    const read = await readPhotos(files, {
      declination,
      near: spot,
      onProgress: (done) => setProgress({ done, of: files.length }),
      signal: stopping.signal,
    });
    const kept = await keepPhotos(read.ready, { repository, zone: spot.zone, newId });
    setProgress(null);
    setSaid([...new Set([...read.said, ...(kept.ok ? [] : [kept.problem])])]);
    if (!kept.ok) return;
    const known = Object.values(spot.photos);
    const added = kept.value.filter(({ photo }, at) => {
      const before = [...known, ...kept.value.slice(0, at).map((one) => one.photo)];
      return !before.some((one) => isSamePhoto(one, photo));
    });
    const what = counted(added.length);
    if (added.length > 0) edit(`add ${what} to ${spot.name}`, addPhotos(spotId, spot, added));
    const again = kept.value.length - added.length;
    say(
      `Added ${what} to ${spot.name}.${again === 0 ? '' : ` ${counted(again)} stood here already.`}`,
    );
  };

  return (
    <>
      <label className="photo-choice">
        <span>Add photos to {spot.name}</span>
        <input
          type="file"
          multiple
          accept="image/*,.heic,.heif,.tif,.tiff"
          data-add-photos
          disabled={progress !== null}
          onChange={(event) => {
            const input = event.currentTarget;
            const files = [...(input.files ?? [])];
            input.value = '';
            if (files.length > 0) void add(files);
          }}
        />
      </label>
      {progress === null ? null : (
        <p role="status" data-note="reading-photos">
          Read {progress.done} of {progress.of}.{' '}
          <button type="button" onClick={() => stop.current?.abort()}>
            Stop here
          </button>
        </p>
      )}
      {said.length === 0 ? null : (
        <ul role="alert" className="photo-said" data-note="photos-said">
          {said.map((sentence) => (
            <li key={sentence} className="fault">
              {sentence}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const counted = (count: number): string => (count === 1 ? '1 photo' : `${count} photos`);
