import { useEffect, useState } from 'react';

import type { FramePixels } from '../../core/plan/frame-pixels.ts';
import type { JobOf } from '../../worker/protocol.ts';
import { useServices } from './services.ts';

export type PictureJob = JobOf<'predicted-frame'> | JobOf<'re-exposed-photo'>;

/** The picture of a job, the last one until a newer has come. Null until the first. */
export function usePicture(job: PictureJob | null): FramePixels | null {
  const { pictures } = useServices();
  const [pixels, setPixels] = useState<FramePixels | null>(null);
  useEffect(
    function askForPicture() {
      if (job === null) return undefined;
      let current = true;
      pictures
        .request<'predicted-frame'>('picture', job as JobOf<'predicted-frame'>)
        .then((answer) => {
          if (current && answer !== null) setPixels(answer);
        })
        .catch((error: unknown) => console.error(error));
      return () => {
        current = false;
      };
    },
    [pictures, job],
  );
  return pixels;
}
