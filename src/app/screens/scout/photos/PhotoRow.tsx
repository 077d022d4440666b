import type { ReactNode } from 'react';

import { editSpotFraming } from '../../../../core/plan/edits.ts';
import { orderKeyAtEnd } from '../../../../core/plan/order-key.ts';
import {
  addReading,
  editPhoto,
  removePhoto,
  removeReading,
} from '../../../../core/plan/photo-edits.ts';
import { framingOfPhoto } from '../../../../core/plan/photo-framing.ts';
import { readingOfPhoto } from '../../../../core/plan/photo-reading.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import type { Photo } from '../../../../core/plan/spot-schema.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { useServices } from '../../../state/services.ts';
import { say } from '../../../state/view.ts';
import { TextField } from '../../../ui/TextField.tsx';
import { exposureText, settingsText, takenText, whereText } from './photo-lines.ts';
import { SavePhoto } from './SavePhoto.tsx';
import { Thumbnail } from './Thumbnail.tsx';

type PhotoRowProps = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly photoId: string;
  readonly photo: Photo;
};

/** One photo: what the camera wrote, the reading it makes, and what can be done with it. */
export function PhotoRow({ spotId, spot, photoId, photo }: PhotoRowProps): ReactNode {
  const edit = useEditShoot();
  const framing = framingOfPhoto(photo, spot.framing);
  const exposure = exposureText(photo);
  return (
    <li data-photo={photoId}>
      <Thumbnail photo={photo} />
      <div>
        <p>
          <strong data-figure="photo-name">{photo.name}</strong>
        </p>
        <p data-figure="photo-taken">{takenText(photo, spot.zone)}</p>
        <p data-figure="photo-where">{whereText(photo, spot)}</p>
        <p data-figure="photo-settings">{settingsText(photo)}</p>
        {exposure === null ? null : <p data-figure="photo-ev">{exposure}</p>}
        <TextField
          label={`Note on ${photo.name}`}
          field="photo-note"
          lines={2}
          value={photo.note}
          onCommit={(note) => edit(`note on ${photo.name}`, editPhoto(spotId, photoId, { note }))}
        />
        <div className="photo-actions">
          {framing === null ? null : (
            <button
              type="button"
              data-photo-framing
              onClick={() => {
                edit(`framing of ${photo.name}`, editSpotFraming(spotId, framing));
                say(`${spot.name} is framed as ${photo.name}`);
              }}
            >
              Use its {framingWords(framing)} for the framing
            </button>
          )}
          <ReadingButton spotId={spotId} spot={spot} photoId={photoId} photo={photo} />
          <SavePhoto photo={photo} />
          <button
            type="button"
            data-remove-photo
            aria-label={`Remove ${photo.name}`}
            onClick={() => {
              edit(`remove ${photo.name}`, removePhoto(spotId, photoId));
              say(`Removed ${photo.name}. Undo brings it back`);
            }}
          >
            Remove
          </button>
        </div>
      </div>
    </li>
  );
}

const framingWords = (framing: NonNullable<ReturnType<typeof framingOfPhoto>>): string =>
  [
    ...(framing.bearingDeg === undefined ? [] : ['direction']),
    ...(framing.focalLengthMm === undefined ? [] : ['focal length']),
  ].join(' and ');

/** Whether the photo's exposure stands among the spot's readings. */
function ReadingButton({ spotId, spot, photoId, photo }: PhotoRowProps): ReactNode {
  const edit = useEditShoot();
  const { newId } = useServices();
  const made = Object.entries(spot.readings).find(([, reading]) => reading.photoId === photoId);
  const reading = readingOfPhoto(photo, { photoId, order: orderKeyAtEnd(spot.readings) });
  if (made !== undefined)
    return (
      <button
        type="button"
        data-drop-reading
        onClick={() => edit(`reading of ${photo.name}`, removeReading(spotId, made[0]))}
      >
        Drop its reading
      </button>
    );
  if (reading === null) return null;
  return (
    <button
      type="button"
      data-take-reading
      onClick={() => edit(`reading of ${photo.name}`, addReading(spotId, newId(), reading))}
    >
      Take its exposure as a reading
    </button>
  );
}
