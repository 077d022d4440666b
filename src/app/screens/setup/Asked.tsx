import type { ReactNode } from 'react';

import type { SetupView } from '../../../core/plan/setup-view.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import type { Setup, Spot } from '../../../core/plan/shoot.ts';
import { AddLight } from './AddLight.tsx';
import { CameraFields } from './CameraFields.tsx';
import { FramingFields } from './FramingFields.tsx';
import { HoldFields } from './HoldFields.tsx';
import { LightFields } from './LightFields.tsx';
import { PatchFields } from './PatchFields.tsx';
import { PeopleFields } from './PeopleFields.tsx';

export type AskedProps = {
  readonly setupId: string;
  readonly setup: Setup;
  readonly spot: Spot;
  readonly view: SetupView | null;
};

/** Everything the recipe is asked from. */
export function Asked(props: AskedProps): ReactNode {
  return (
    <section className="asked" aria-label="What is asked">
      <h2>What is asked</h2>
      <div className="groups">
        <HoldFields {...props} />
        {inOrder(props.setup.lights).map(([lightId, light]) => (
          <LightFields key={lightId} setupId={props.setupId} lightId={lightId} light={light} />
        ))}
        <AddLight setupId={props.setupId} setup={props.setup} />
        <FramingFields {...props} />
        <PatchFields {...props} />
        <PeopleFields {...props} />
        <CameraFields {...props} />
      </div>
    </section>
  );
}
