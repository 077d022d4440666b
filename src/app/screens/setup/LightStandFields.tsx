import type { ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import { useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { WithPin } from './Group.tsx';
import type { LightProps } from './light-props.ts';
import { Pin } from './Pin.tsx';
import { useLightEdit } from './use-setup-edit.ts';

const IN_THE_HAND = '';

/** What the light stands on, where, and where it points. */
export function LightStandFields({ setupId, lightId, light }: LightProps): ReactNode {
  const kit = useKit();
  const put = useLightEdit(setupId, lightId);
  const isBounced = light.bounce !== null;
  return (
    <>
      <SelectField
        label="Stands on"
        field={`stand-${lightId}`}
        value={light.standId ?? IN_THE_HAND}
        options={[
          { value: IN_THE_HAND, text: 'no stand: held in the hand' },
          ...inOrder(kit.stands).map(([value, { name }]) => ({ value, text: name })),
        ]}
        onChoose={(id) => put('stand', { standId: id === IN_THE_HAND ? null : id })}
      />
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
          label={isBounced ? 'Lit patch to middle face' : 'Face to middle face'}
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
      {isBounced ? null : (
        <NumberField
          label="Turned off the middle face"
          field={`feather-${lightId}`}
          value={light.featherDeg}
          unit="°"
          min={0}
          max={80}
          step={5}
          digits={1}
          note="level, towards the far end of the row"
          onCommit={(value) => value !== null && put('feathering', { featherDeg: value })}
        />
      )}
    </>
  );
}
