import { memo, type ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import { AddLight } from './AddLight.tsx';
import type { AskedProps } from './asked-props.ts';
import { CameraFields } from './CameraFields.tsx';
import { FramingFields } from './FramingFields.tsx';
import { HoldFields } from './HoldFields.tsx';
import { LightFields } from './LightFields.tsx';
import { PaceFields } from './PaceFields.tsx';
import { PatchFields } from './PatchFields.tsx';
import { PeopleFields } from './PeopleFields.tsx';
import { WhiteBalance } from './WhiteBalance.tsx';
import { WindFields } from './WindFields.tsx';

/** Everything the recipe is asked from. */
export const Asked = memo(function Asked(props: AskedProps): ReactNode {
  return (
    <section className="asked" aria-label="What is asked">
      <h2>What is asked</h2>
      <div className="groups">
        <HoldFields {...props} />
        {inOrder(props.setup.lights).map(([lightId, light]) => (
          <LightFields
            key={lightId}
            {...props}
            lightId={lightId}
            light={light}
            source={props.view?.sources.find((source) => source.lightId === lightId) ?? null}
          />
        ))}
        <AddLight setupId={props.setupId} setup={props.setup} />
        <FramingFields {...props} />
        <PatchFields {...props} />
        <PeopleFields {...props} />
        <WindFields {...props} />
        <PaceFields {...props} />
        <CameraFields {...props} />
        <WhiteBalance {...props} />
      </div>
    </section>
  );
});
