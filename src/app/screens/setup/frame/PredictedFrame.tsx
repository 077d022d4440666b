import './frame.css';
import { useState, type ReactNode } from 'react';

import { inOrder } from '../../../../core/plan/order-key.ts';
import { photoEv100 } from '../../../../core/plan/photo-reading.ts';
import type { Kit } from '../../../../core/plan/kit.ts';
import type { SetupView } from '../../../../core/plan/setup-view.ts';
import { SelectField } from '../../../ui/SelectField.tsx';
import { ComputedFrame } from './ComputedFrame.tsx';
import { ReExposedFrame } from './ReExposedFrame.tsx';

type PredictedFrameProps = {
  readonly view: SetupView;
  readonly kit: Kit;
  readonly minuteMs: number;
};

/** What the picture will look like: computed, or a scouting photo at the recipe's settings. */
export function PredictedFrame({ view, kit, minuteMs }: PredictedFrameProps): ReactNode {
  const [shown, setShown] = useState('computed');
  const working = view.answer.ok ? view.answer.value : null;
  const photos = inOrder(view.spot.photos).filter(([, photo]) => photo.widthPx > 0);
  if (working === null)
    return (
      <p className="gap no-frame">No predicted frame: at this minute there is no recipe to show.</p>
    );
  const photo = view.spot.photos[shown];
  return (
    <div className="frame-part">
      {photos.length === 0 ? null : (
        <SelectField
          label="Show"
          field="frame-shown"
          value={photo === undefined ? 'computed' : shown}
          options={[
            { value: 'computed', text: 'the computed frame' },
            ...photos.map(([id, one]) => ({
              value: id,
              text: `${one.name} at these settings${photoEv100(one) === null ? ' (no exposure known)' : ''}`,
            })),
          ]}
          onChoose={setShown}
        />
      )}
      {photo === undefined ? (
        <ComputedFrame view={view} working={working} kit={kit} minuteMs={minuteMs} />
      ) : (
        <ReExposedFrame key={shown} photo={photo} view={view} working={working} />
      )}
    </div>
  );
}
