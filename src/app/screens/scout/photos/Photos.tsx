import './photos.css';

import { memo, type ReactNode } from 'react';

import { inOrder } from '../../../../core/plan/order-key.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { AddPhotos } from './AddPhotos.tsx';
import { PhotoRow } from './PhotoRow.tsx';

type PhotosProps = { readonly spotId: string; readonly spot: Spot };

/** The scouting photos of a spot, kept small beside it. */
export const Photos = memo(function Photos({ spotId, spot }: PhotosProps): ReactNode {
  const photos = inOrder(spot.photos);
  return (
    <section aria-label="Photos">
      {photos.length === 0 ? (
        <p className="quiet">No photo yet.</p>
      ) : (
        <ul className="photo-list">
          {photos.map(([photoId, photo]) => (
            <PhotoRow key={photoId} spotId={spotId} spot={spot} photoId={photoId} photo={photo} />
          ))}
        </ul>
      )}
      <AddPhotos spotId={spotId} spot={spot} />
      <details>
        <summary data-open="about-photos">What is kept of a photo</summary>
        <p className="quiet">
          A copy of at most 1600 pixels and what the camera wrote; the file itself stays where it
          is. A time counts by the offset the camera wrote with it, or else its clock is taken to
          have shown {spot.zone.replaceAll('_', ' ')}. The exposure becomes a reading unless the
          flash fired: what the photo shows as mid-grey, if the meter had it right and no filter was
          on the lens. Photos stay on this device until you save the shoot as a file, and the place
          they were taken at goes along only if you tick it there.
        </p>
      </details>
    </section>
  );
});
