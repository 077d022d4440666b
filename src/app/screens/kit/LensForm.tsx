import type { ReactNode } from 'react';

import { editKitItem } from '../../../core/plan/edits.ts';
import type { Lens } from '../../../core/plan/kit.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { Switch } from '../../ui/Switch.tsx';
import { ShutterField } from './ShutterField.tsx';

const USUAL_LEAF_SHUTTER_S = 1 / 500;

export function LensForm({ id }: { readonly id: string }): ReactNode {
  const lens = useKit().lenses[id];
  const edit = useEditKit();
  if (lens === undefined) return null;
  const set = (fields: Partial<Lens>): void =>
    edit(`change ${lens.name}`, editKitItem('lenses', id, fields));
  const number =
    (field: 'minFocalLengthMm' | 'maxFocalLengthMm' | 'minFNumber' | 'maxFNumber') =>
    (value: number | null): void =>
      void (value !== null && set({ [field]: value }));
  return (
    <div className="fields">
      <NumberField
        label="Shortest focal length"
        field="min-focal"
        unit="mm"
        min={4}
        max={lens.maxFocalLengthMm}
        step={1}
        value={lens.minFocalLengthMm}
        onCommit={number('minFocalLengthMm')}
      />
      <NumberField
        label="Longest focal length"
        field="max-focal"
        unit="mm"
        min={lens.minFocalLengthMm}
        max={2000}
        step={1}
        value={lens.maxFocalLengthMm}
        onCommit={number('maxFocalLengthMm')}
      />
      <NumberField
        label="Widest f-number"
        field="min-f-number"
        min={0.7}
        max={lens.maxFNumber}
        step={0.1}
        value={lens.minFNumber}
        onCommit={number('minFNumber')}
      />
      <NumberField
        label="Smallest opening, f-number"
        field="max-f-number"
        min={lens.minFNumber}
        max={128}
        step={1}
        value={lens.maxFNumber}
        onCommit={number('maxFNumber')}
      />
      <NumberField
        label="Filter thread"
        field="thread"
        unit="mm"
        optional
        min={20}
        max={200}
        step={1}
        value={lens.threadMm}
        onCommit={(threadMm) => set({ threadMm })}
      />
      <NumberField
        label="Weighs"
        field="lens-mass"
        unit="kg"
        min={0}
        max={20}
        step={0.1}
        digits={2}
        value={lens.massKg}
        note={lens.massKg === 0 ? '0: not stated' : undefined}
        onCommit={(massKg) => massKg !== null && set({ massKg })}
      />
      <Switch
        label="Leaf shutter in the lens"
        field="leaf"
        on={lens.leafShutterS !== null}
        onTurn={(on) => set({ leafShutterS: on ? USUAL_LEAF_SHUTTER_S : null })}
      />
      {lens.leafShutterS === null ? null : (
        <ShutterField
          label="Fastest leaf shutter"
          field="leaf-shutter"
          min={1 / 4000}
          max={1 / 30}
          value={lens.leafShutterS}
          onCommit={(leafShutterS) => set({ leafShutterS })}
        />
      )}
    </div>
  );
}
