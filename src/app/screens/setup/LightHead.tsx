import type { ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import { useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { WithPin } from './Group.tsx';
import type { LightProps } from './light-props.ts';
import { Pin } from './Pin.tsx';
import { powerText } from '../../ui/power-text.ts';
import { useLightEdit } from './use-setup-edit.ts';

/** Which head, how many, and its power where that is decided. */
export function LightHead({ setupId, lightId, light }: LightProps): ReactNode {
  const kit = useKit();
  const put = useLightEdit(setupId, lightId);
  const head = kit.heads[light.headId];
  const pinned = light.pinnedPowerStops;
  return (
    <>
      <SelectField
        label="Head"
        field={`head-${lightId}`}
        value={light.headId}
        options={inOrder(kit.heads).map(([value, { name }]) => ({ value, text: name }))}
        onChoose={(headId) => put('head', { headId })}
      />
      <NumberField
        label="How many"
        field={`head-count-${lightId}`}
        value={light.headCount}
        min={1}
        max={20}
        step={1}
        onCommit={(value) => value !== null && put('heads', { headCount: Math.round(value) })}
      />
      {pinned === null ? null : (
        <WithPin
          pin={
            <Pin
              what={`power-${lightId}-typed`}
              name="its power"
              on
              onTurn={() => put('power pin', { pinnedPowerStops: null })}
            />
          }
        >
          <NumberField
            label="Power pinned, below full"
            field={`pinned-power-${lightId}`}
            value={Math.abs(pinned)}
            unit="stops"
            min={0}
            max={12}
            step={head?.stepStops ?? 0.1}
            digits={2}
            {...(head === undefined ? {} : { note: powerText(pinned, head).dial })}
            onCommit={(value) =>
              value !== null && put('power pin', { pinnedPowerStops: value === 0 ? 0 : -value })
            }
          />
        </WithPin>
      )}
    </>
  );
}
