import type { ReactNode } from 'react';

import { NumberField } from '../../ui/NumberField.tsx';
import type { AskedProps } from './asked-props.ts';
import { Group } from './Group.tsx';
import { useSetupEdit } from './use-setup-edit.ts';

/** How many frames are taken, and in which cold: what the batteries have to give. */
export function PaceFields({ setupId, setup }: AskedProps): ReactNode {
  const put = useSetupEdit(setupId);
  return (
    <Group title="Frames" id="frames">
      <NumberField
        label="Frames with flash, tests too"
        field="frames"
        value={setup.frames}
        min={1}
        max={5000}
        step={10}
        digits={0}
        onCommit={(frames) => frames !== null && put('frames', { frames: Math.round(frames) })}
      />
      <NumberField
        label="Air"
        field="air-temperature"
        value={setup.airC}
        unit="°C"
        min={-30}
        max={45}
        step={1}
        digits={1}
        onCommit={(airC) => airC !== null && put('temperature', { airC })}
      />
    </Group>
  );
}
