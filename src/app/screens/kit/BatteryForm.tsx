import type { ReactNode } from 'react';

import { editKitItem } from '../../../core/plan/edits.ts';
import type { Battery } from '../../../core/plan/kit.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';

export function BatteryForm({ id }: { readonly id: string }): ReactNode {
  const battery = useKit().batteries[id];
  const edit = useEditKit();
  if (battery === undefined) return null;
  const set = (fields: Partial<Battery>): void =>
    edit(`change ${battery.name}`, editKitItem('batteries', id, fields));
  return (
    <div className="fields">
      <NumberField
        label="Owned"
        field="battery-owned"
        min={1}
        max={50}
        step={1}
        digits={0}
        value={battery.owned}
        onCommit={(owned) => owned !== null && set({ owned })}
      />
      <NumberField
        label="Holds"
        field="battery-energy"
        unit="Wh"
        min={0.1}
        max={5000}
        step={1}
        value={battery.wattHours}
        onCommit={(wattHours) => wattHours !== null && set({ wattHours })}
      />
      <NumberField
        label="Weighs"
        field="battery-mass"
        unit="kg"
        min={0}
        max={50}
        step={0.1}
        digits={2}
        value={battery.massKg}
        onCommit={(massKg) => massKg !== null && set({ massKg })}
      />
    </div>
  );
}
