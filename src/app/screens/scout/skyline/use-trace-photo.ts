import { useCallback, useEffect, useState } from 'react';

import type { Photo } from '../../../../core/plan/spot-schema.ts';
import { atanDeg } from '../../../../core/units/angle.ts';
import { useServices } from '../../../state/services.ts';

export type OpenPhoto = {
  readonly url: string;
  readonly name: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** By its focal length, at the sides of the long edge; null where that is not known. */
  readonly fieldDeg: number | null;
};

export type PhotoState =
  | { readonly kind: 'none' }
  | { readonly kind: 'opening' }
  | { readonly kind: 'open'; readonly photo: OpenPhoto }
  | { readonly kind: 'failed'; readonly sentence: string };

const MOST_BYTES = 60e6;
const MOST_PIXELS = 250e6;
const LEAST_SIDE_PX = 50;

/** A photo to trace on. It stays in this page: nothing of a file opened here is kept. */
export function useTracePhoto(): {
  readonly state: PhotoState;
  readonly openFile: (file: File) => void;
  readonly openPhoto: (photo: Photo) => void;
} {
  const { repository } = useServices();
  const [state, setState] = useState<PhotoState>({ kind: 'none' });
  const url = state.kind === 'open' ? state.photo.url : null;
  useEffect(
    function letGo() {
      return () => {
        if (url !== null) URL.revokeObjectURL(url);
      };
    },
    [url],
  );

  const show = useCallback(async (blob: Blob, name: string, fieldDeg: number | null) => {
    setState({ kind: 'opening' });
    setState(await opened(blob, name, fieldDeg));
  }, []);
  const openFile = useCallback((file: File): void => void show(file, file.name, null), [show]);
  const openPhoto = useCallback(
    (photo: Photo): void => {
      void repository.blob(photo.contentHash).then((read) => {
        if (!read.ok) return setState({ kind: 'failed', sentence: read.problem.sentence });
        if (read.value === null)
          return setState({
            kind: 'failed',
            sentence: `The picture of ${photo.name} is not on this device.`,
          });
        return show(
          new Blob([read.value.bytes], { type: read.value.type }),
          photo.name,
          fieldOf(photo),
        );
      });
    },
    [repository, show],
  );
  return { state, openFile, openPhoto };
}

async function opened(blob: Blob, name: string, fieldDeg: number | null): Promise<PhotoState> {
  const failed = (found: string, expected: string): PhotoState => ({
    kind: 'failed',
    sentence: `${name} could not be opened: found ${found}, expected ${expected}.`,
  });
  if (blob.size > MOST_BYTES)
    return failed(`${Math.round(blob.size / 1e6)} MB`, `a photo of at most ${MOST_BYTES / 1e6} MB`);
  const url = URL.createObjectURL(blob);
  const image = new Image();
  image.src = url;
  const isPhoto = await image.decode().then(
    () => true,
    () => false,
  );
  const { naturalWidth: widthPx, naturalHeight: heightPx } = image;
  const problem = !isPhoto
    ? failed('nothing this browser can show', 'a photo as JPEG, PNG, WebP or AVIF')
    : widthPx * heightPx > MOST_PIXELS
      ? failed(`${Math.round((widthPx * heightPx) / 1e6)} megapixels`, 'at most 250')
      : Math.min(widthPx, heightPx) < LEAST_SIDE_PX
        ? failed(`${widthPx} × ${heightPx} pixels`, 'at least 50 on each side')
        : null;
  if (problem !== null) {
    URL.revokeObjectURL(url);
    return problem;
  }
  return { kind: 'open', photo: { url, name, widthPx, heightPx, fieldDeg } };
}

const FULL_FRAME_LONG_MM = 36;

const fieldOf = ({ focalLength35Mm, widthPx, heightPx }: Photo): number | null => {
  if (focalLength35Mm === null || widthPx === 0) return null;
  const acrossMm =
    widthPx >= heightPx ? FULL_FRAME_LONG_MM : (FULL_FRAME_LONG_MM * widthPx) / heightPx;
  return 2 * atanDeg(acrossMm / (2 * focalLength35Mm));
};
