import type { ReactNode } from 'react';

import { miredFromKelvin } from '../../../core/colour/mired.ts';
import { formatShutter } from '../../../core/exposure/shutter-scale.ts';
import { editKitItem } from '../../../core/plan/edits.ts';
import type { Camera } from '../../../core/plan/kit.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { evAsSettings } from '../../ui/figure-text.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { ShutterField } from './ShutterField.tsx';

type NumberOfCamera = {
  [Key in keyof Camera]: Camera[Key] extends number ? Key : never;
}[keyof Camera];

export function CameraForm({ id }: { readonly id: string }): ReactNode {
  const camera = useKit().cameras[id];
  const edit = useEditKit();
  if (camera === undefined) return null;
  const set = (fields: Partial<Camera>): void =>
    edit(`change ${camera.name}`, editKitItem('cameras', id, fields));
  const number =
    (field: NumberOfCamera) =>
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
      <NumberField
        label="Autofocus works down to"
        field="autofocus-limit"
        unit="EV"
        min={-10}
        max={5}
        step={0.5}
        value={camera.autofocusLimitEv}
        note="as stated, at ISO 100; with a bright lens and an edge to hold on to"
        onCommit={number('autofocusLimitEv')}
      />
      <NumberField
        label="White balance from"
        field="min-kelvin"
        unit="K"
        min={1500}
        max={6000}
        step={100}
        value={camera.minKelvin}
        onCommit={number('minKelvin')}
      />
      <NumberField
        label="White balance to"
        field="max-kelvin"
        unit="K"
        min={5000}
        max={20000}
        step={100}
        value={camera.maxKelvin}
        onCommit={number('maxKelvin')}
      />
      <NumberField
        label="Weighs"
        field="camera-mass"
        unit="kg"
        min={0}
        max={20}
        step={0.1}
        digits={2}
        value={camera.massKg}
        note={camera.massKg === 0 ? '0: not stated' : undefined}
        onCommit={number('massKg')}
      />
      <p className="quiet">
        Syncs at {formatShutter(camera.syncShutterS)} and slower. Autofocus ends where a camera
        would show{' '}
        <span data-figure="autofocus-as-settings">{evAsSettings(camera.autofocusLimitEv)}</span>.
        What it can call white lies{' '}
        <span data-figure="white-range">
          {Math.round(miredFromKelvin(camera.minKelvin) - miredFromKelvin(camera.maxKelvin))} mired
        </span>{' '}
        apart, {Math.round(miredFromKelvin(camera.maxKelvin))} to{' '}
        {Math.round(miredFromKelvin(camera.minKelvin))}.
      </p>
    </div>
  );
}
