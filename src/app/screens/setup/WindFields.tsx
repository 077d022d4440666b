import type { ReactNode } from 'react';

import { NumberField } from '../../ui/NumberField.tsx';
import type { AskedProps } from './asked-props.ts';
import { Group } from './Group.tsx';
import { useSetupEdit } from './use-setup-edit.ts';

/** The strongest gust that is expected: no stand has a ballast figure without it. */
export function WindFields({ setupId, setup }: AskedProps): ReactNode {
  const put = useSetupEdit(setupId);
  return (
    <Group title="Wind" id="wind">
      <NumberField
        label="Gusts up to, empty when not known"
        field="gust"
        value={setup.gustMS}
        unit="m/s"
        min={0}
        max={40}
        step={1}
        digits={1}
        optional
        onCommit={(gustMS) => put('gusts', { gustMS })}
      />
    </Group>
  );
}
