import { useEffect, useState } from 'react';

import type { FramePixels } from '../../../../core/plan/frame-pixels.ts';
import { useServices } from '../../../state/services.ts';

/** As large as it is shown. */
const LONG_SIDE_PX = 900;

/** The kept copy of a photo as pixels; a sentence where this device does not have it. */
export function usePhotoPixels(contentHash: string): FramePixels | string | null {
  const { repository } = useServices();
  const [pixels, setPixels] = useState<FramePixels | string | null>(null);
  useEffect(
    function readPhoto() {
      let current = true;
      const tell = (read: FramePixels | string): void => {
        if (current) setPixels(read);
      };
      void repository.blob(contentHash).then(async (found) => {
        if (!found.ok) return tell(found.problem.sentence);
        if (found.value === null) return tell('This photo’s picture is not on this device.');
        const { bytes, type } = found.value;
        return tell(
          await pixelsOf(new Blob([bytes], { type })).catch(
            () => 'This photo’s picture could not be read.',
          ),
        );
      });
      return () => {
        current = false;
      };
    },
    [repository, contentHash],
  );
  return pixels;
}

async function pixelsOf(blob: Blob): Promise<FramePixels> {
  const bitmap = await createImageBitmap(blob);
  const scale = Math.min(1, LONG_SIDE_PX / Math.max(bitmap.width, bitmap.height));
  const widthPx = Math.max(1, Math.round(bitmap.width * scale));
  const heightPx = Math.max(1, Math.round(bitmap.height * scale));
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d', { colorSpace: 'srgb' });
  if (context === null) throw new Error('no canvas');
  context.drawImage(bitmap, 0, 0, widthPx, heightPx);
  bitmap.close();
  const { data } = context.getImageData(0, 0, widthPx, heightPx);
  return { widthPx, heightPx, rgba: new Uint8ClampedArray(data) };
}
