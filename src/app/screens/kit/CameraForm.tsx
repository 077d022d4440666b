import type { ReactNode } from 'react';

import { formatShutter } from '../../../core/exposure/shutter-scale.ts';
import { editKitItem } from '../../../core/plan/edits.ts';
import type { Camera } from '../../../core/plan/kit.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { ShutterField } from './ShutterField.tsx';

export function CameraForm({ id }: { readonly id: string }): ReactNode {
  const camera = useKit().cameras[id];
  const edit = useEditKit();
  if (camera === undefined) return null;
  const set = (fields: Partial<Camera>): void =>
    edit(`change ${camera.name}`, editKitItem('cameras', id, fields));
  const number =
    (field: 'sensorWidthMm' | 'sensorHeightMm' | 'baseIso' | 'maxIso') =>
    (value: number | null): void =>
      void (value !== null && set({ [field]: value }));
  return (
    <div className="fields">
      <NumberField
        label="Sensor, long side"
        field="sensor-width"
        unit="mm"
        min={4}
        max={120}
        step={0.1}
        value={camera.sensorWidthMm}
        onCommit={number('sensorWidthMm')}
      />
      <NumberField
        label="Sensor, short side"
        field="sensor-height"
        unit="mm"
        min={3}
        max={100}
        step={0.1}
        value={camera.sensorHeightMm}
        onCommit={number('sensorHeightMm')}
      />
      <ShutterField
        label="Sync shutter"
        field="sync-shutter"
        min={1 / 4000}
        max={1 / 30}
        value={camera.syncShutterS}
        onCommit={(syncShutterS) => set({ syncShutterS })}
      />
      <ShutterField
        label="Fastest shutter"
        field="fastest-shutter"
        min={1 / 64000}
        max={1 / 250}
        value={camera.fastestShutterS}
        onCommit={(fastestShutterS) => set({ fastestShutterS })}
      />
      <ShutterField
        label="Slowest shutter"
        field="slowest-shutter"
        min={1 / 60}
        max={900}
        value={camera.slowestShutterS}
        onCommit={(slowestShutterS) => set({ slowestShutterS })}
      />
      <NumberField
        label="Base ISO"
        field="base-iso"
        min={25}
        max={1600}
        step={25}
        value={camera.baseIso}
        onCommit={number('baseIso')}
      />
      <NumberField
        label="Highest ISO you accept"
        field="max-iso"
        min={100}
        max={409600}
        step={100}
        value={camera.maxIso}
        onCommit={number('maxIso')}
      />
      <SelectField
        label="Dials click in"
        field="step"
        value={camera.step}
        options={[
          { value: 'third', text: 'third stops' },
          { value: 'half', text: 'half stops' },
        ]}
        onChoose={(step) => set({ step })}
      />
      <p className="quiet">Syncs at {formatShutter(camera.syncShutterS)} and slower.</p>
    </div>
  );
}
