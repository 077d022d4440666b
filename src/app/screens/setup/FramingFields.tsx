import type { ReactNode } from 'react';

import { editSetupFraming } from '../../../core/plan/edits.ts';
import { framingOf } from '../../../core/plan/picture-geometry.ts';
import type { ShootFraming } from '../../../core/plan/spot-schema.ts';
import { useEditShoot, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import type { AskedProps } from './asked-props.ts';
import { FRAMING_NUMBERS } from './framing-numbers.ts';
import { Group } from './Group.tsx';
import { Pin } from './Pin.tsx';
import { useSetupEdit } from './use-setup-edit.ts';

/** Where the camera looks; the spot's framing until the setup is given its own. */
export function FramingFields({ setupId, setup, spot }: AskedProps): ReactNode {
  const edit = useEditShoot();
  const put = useSetupEdit(setupId);
  const framing = framingOf(setup, spot);
  const change = (label: string, fields: Partial<ShootFraming>): void =>
    edit(label, editSetupFraming(setupId, fields));
  return (
    <Group
      title="Framing"
      id="framing"
      aside={
        <>
          <span className="quiet">
            {setup.framing === null
              ? `The framing of ${spot.name}; a change here gives this setup its own.`
              : 'This setup’s own.'}
          </span>
          {setup.framing === null ? (
            <button
              type="button"
              data-own-framing
              onClick={() => put('own framing', { framing: { ...spot.framing } })}
            >
              Give this setup its own framing
            </button>
          ) : (
            <button
              type="button"
              data-spot-framing
              onClick={() => put('framing of the spot', { framing: null })}
            >
              Back to the spot’s
            </button>
          )}
          <Pin
            what="framing"
            name="the framing"
            on={setup.framingPinned}
            onTurn={(on) => put('framing pin', { framingPinned: on })}
          />
        </>
      }
    >
      {FRAMING_NUMBERS.map((field) => (
        <NumberField
          key={field.key}
          label={field.label}
          field={field.id}
          value={framing[field.key]}
          unit={field.unit}
          min={field.min}
          max={field.max}
          step={field.step}
          digits={2}
          onCommit={(value) => {
            if (value === null) return;
            // A full turn is north again.
            change(field.label.toLowerCase(), {
              [field.key]: field.key === 'bearingDeg' ? value % 360 : value,
            });
          }}
        />
      ))}
      <SelectField
        label="Orientation"
        field="orientation"
        value={framing.orientation}
        options={[
          { value: 'landscape', text: 'landscape' },
          { value: 'portrait', text: 'portrait' },
        ]}
        onChoose={(orientation) => change('orientation', { orientation })}
      />
      <SensorNote setupId={setupId} cameraId={setup.cameraId} framing={framing} />
    </Group>
  );
}

type SensorNoteProps = {
  readonly setupId: string;
  readonly cameraId: string;
  readonly framing: ShootFraming;
};

/** Where framing and camera disagree about the sensor, says so and offers the camera's. */
function SensorNote({ setupId, cameraId, framing }: SensorNoteProps): ReactNode {
  const edit = useEditShoot();
  const camera = useKit().cameras[cameraId];
  if (camera === undefined) return null;
  const { sensorWidthMm, sensorHeightMm } = camera;
  if (sensorWidthMm === framing.sensorWidthMm && sensorHeightMm === framing.sensorHeightMm)
    return null;
  return (
    <p className="wide" data-note="sensor">
      Framed for a sensor of {framing.sensorWidthMm} × {framing.sensorHeightMm} mm; the camera
      chosen has {sensorWidthMm} × {sensorHeightMm} mm.{' '}
      <button
        type="button"
        data-use-sensor
        onClick={() => edit('sensor', editSetupFraming(setupId, { sensorWidthMm, sensorHeightMm }))}
      >
        Use the camera’s sensor
      </button>
    </p>
  );
}
