import { useEffect, useState, type ReactNode } from 'react';

import type { Photo } from '../../../../core/plan/spot-schema.ts';
import { useServices } from '../../../state/services.ts';

type Picture =
  | { readonly kind: 'loading' }
  | { readonly kind: 'none'; readonly sentence: string }
  | { readonly kind: 'there'; readonly address: string };

/** The small picture; pressed, it is shown as wide as the sheet. */
export function Thumbnail({ photo }: { readonly photo: Photo }): ReactNode {
  const picture = usePicture(photo);
  const [large, setLarge] = useState(false);
  if (picture.kind === 'loading') return <span className="photo-place" aria-busy />;
  if (picture.kind === 'none')
    return (
      <span className="photo-place quiet" data-note="no-picture">
        {picture.sentence}
      </span>
    );
  return (
    <button
      type="button"
      className="photo-picture"
      aria-pressed={large}
      aria-label={large ? `Show ${photo.name} small` : `Show ${photo.name} large`}
      onClick={() => setLarge(!large)}
    >
      <img
        src={picture.address}
        alt={photo.name}
        width={photo.widthPx}
        height={photo.heightPx}
        decoding="async"
      />
    </button>
  );
}

function usePicture({ contentHash, widthPx }: Photo): Picture {
  const { repository } = useServices();
  const [picture, setPicture] = useState<Picture>({ kind: 'loading' });
  const hasPicture = widthPx > 0;
  useEffect(
    function readPicture() {
      if (!hasPicture) return undefined;
      let address: string | null = null;
      let gone = false;
      void repository.blob(contentHash).then((kept) => {
        if (gone) return;
        if (!kept.ok) setPicture({ kind: 'none', sentence: kept.problem.sentence });
        else if (kept.value === null)
          setPicture({ kind: 'none', sentence: 'Its picture is not on this device' });
        else {
          address = URL.createObjectURL(new Blob([kept.value.bytes], { type: kept.value.type }));
          setPicture({ kind: 'there', address });
        }
      });
      return () => {
        gone = true;
        if (address !== null) URL.revokeObjectURL(address);
      };
    },
    [repository, contentHash, hasPicture],
  );
  return hasPicture ? picture : { kind: 'none', sentence: 'Kept without its picture' };
}
