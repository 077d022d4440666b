import { useId, type ReactNode } from 'react';

import { inOrder } from '../../../../core/plan/order-key.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { SelectField } from '../../../ui/SelectField.tsx';
import type { KeepAnswer } from './KeepTrace.tsx';
import { TraceOnPhoto } from './TraceOnPhoto.tsx';
import { useTracePhoto } from './use-trace-photo.ts';

type PhotoTraceProps = {
  readonly spot: Spot;
  readonly onKeep: (keep: KeepAnswer, runs: readonly Skyline[]) => void;
};

/** A photo to trace the skyline on: a file, or one kept with the spot. */
export function PhotoTrace({ spot, onKeep }: PhotoTraceProps): ReactNode {
  const id = useId();
  const { state, openFile, openPhoto } = useTracePhoto();
  const photos = inOrder(spot.photos).filter(([, { widthPx }]) => widthPx > 0);
  return (
    <>
      <p className="quiet">
        A wide photo taken at the spot, uncropped, with two points in it whose bearing and altitude
        you know: far apart, such as two summits or steeples. A file opened here stays in this page.
      </p>
      <div className="field">
        <label htmlFor={id}>Open a photo</label>
        <input
          id={id}
          type="file"
          accept="image/*"
          data-field="trace-photo"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file !== undefined) openFile(file);
          }}
        />
      </div>
      {photos.length === 0 ? null : (
        <SelectField
          label="Or one of the spot’s"
          field="trace-spot-photo"
          value=""
          options={[
            { value: '', text: 'choose…' },
            ...photos.map(([photoId, { name }]) => ({ value: photoId, text: name })),
          ]}
          onChoose={(photoId) => {
            const photo = spot.photos[photoId];
            if (photo !== undefined) openPhoto(photo);
          }}
        />
      )}
      {state.kind === 'opening' ? <p className="quiet">Opening…</p> : null}
      {state.kind === 'failed' ? (
        <p className="fault" role="alert" data-figure="photo-fault">
          {state.sentence}
        </p>
      ) : null}
      {state.kind === 'open' ? (
        <TraceOnPhoto key={state.photo.url} photo={state.photo} spot={spot} onKeep={onKeep} />
      ) : null}
    </>
  );
}
