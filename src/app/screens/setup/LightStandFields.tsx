import type { ReactNode } from 'react';

import { NumberField } from '../../ui/NumberField.tsx';
import { WithPin } from './Group.tsx';
import type { LightProps } from './light-props.ts';
import { Pin } from './Pin.tsx';
import { useLightEdit } from './use-setup-edit.ts';

/** Where the light stands. */
export function LightStandFields({ setupId, lightId, light }: LightProps): ReactNode {
  const put = useLightEdit(setupId, lightId);
  return (
    <>
      <WithPin
        pin={
          <Pin
            what={`distance-${lightId}`}
            name="the distance"
            on={light.distancePinned}
            onTurn={(on) => put('distance pin', { distancePinned: on })}
          />
        }
      >
        <NumberField
          label="Face to middle face"
          field={`distance-${lightId}`}
          value={light.distanceM}
          unit="m"
          min={0.2}
          max={30}
          step={0.05}
          digits={2}
          onCommit={(value) => value !== null && put('distance', { distanceM: value })}
        />
      </WithPin>
      <NumberField
        label="Angle, + to the camera’s right"
        field={`angle-${lightId}`}
        value={light.angleDeg}
        unit="°"
        min={-180}
        max={180}
        step={5}
        digits={1}
        onCommit={(value) => value !== null && put('angle', { angleDeg: value })}
      />
      <NumberField
        label="Height"
        field={`height-${lightId}`}
        value={light.heightM}
        unit="m"
        min={0}
        max={8}
        step={0.1}
        digits={2}
        onCommit={(value) => value !== null && put('height', { heightM: value })}
      />
    </>
  );
}
