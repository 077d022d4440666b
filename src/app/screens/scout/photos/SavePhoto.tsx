import type { ReactNode } from 'react';

import type { Photo } from '../../../../core/plan/spot-schema.ts';
import { useServices } from '../../../state/services.ts';
import { say } from '../../../state/view.ts';
import { saveFile } from '../../../ui/save-file.ts';

/** The kept copy as a file: it was drawn anew, so nothing that the camera wrote is in it. */
export function SavePhoto({ photo }: { readonly photo: Photo }): ReactNode {
  const { repository } = useServices();
  const save = async (): Promise<void> => {
    const found = await repository.blob(photo.contentHash);
    if (!found.ok) return say(found.problem.sentence);
    if (found.value === null) return say(`The picture of ${photo.name} is not on this device`);
    const { bytes, type } = found.value;
    saveFile(`${photo.name.replace(/\.\w{2,5}$/, '')}.jpg`, new Blob([bytes], { type }));
    return say(`${photo.name} went to the browser’s downloads, without place, time or camera data`);
  };
  if (photo.widthPx === 0) return null;
  return (
    <button type="button" data-save-photo onClick={() => void save()}>
      Save without its place
    </button>
  );
}
