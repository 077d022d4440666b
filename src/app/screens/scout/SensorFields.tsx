import { useState, type ReactNode } from 'react';

import type { ShootFraming } from '../../../core/plan/spot-schema.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { formatOf, SENSOR_FORMATS } from './sensor-formats.ts';

type Size = Pick<ShootFraming, 'sensorWidthMm' | 'sensorHeightMm'>;

type SensorFieldsProps = {
  readonly framing: Size;
  readonly onPut: (size: Partial<Size>) => void;
};

/** One of the common formats, or the sides in millimetres. */
export function SensorFields({ framing, onPut }: SensorFieldsProps): ReactNode {
  const [ownIsOpen, setOwnIsOpen] = useState(false);
  const format = formatOf(framing);
  const isOwn = ownIsOpen || format === 'own';
  return (
    <>
      <div className="whole-row">
        <SelectField
          label="Sensor, mm"
          field="sensor-format"
          value={isOwn ? 'own' : format}
          options={[
            ...SENSOR_FORMATS.map(({ text }, at) => ({ value: String(at), text })),
            { value: 'own', text: 'own size' },
          ]}
          onChoose={(chosen) => {
            const size = SENSOR_FORMATS[Number(chosen)];
            setOwnIsOpen(size === undefined);
            if (size !== undefined)
              onPut({ sensorWidthMm: size.widthMm, sensorHeightMm: size.heightMm });
          }}
        />
      </div>
      {isOwn ? (
        <>
          <NumberField
            label="Long side"
            unit="mm"
            field="sensor-width"
            value={framing.sensorWidthMm}
            min={4}
            max={120}
            step={0.1}
            digits={2}
            onCommit={(value) => value !== null && onPut({ sensorWidthMm: value })}
          />
          <NumberField
            label="Short side"
            unit="mm"
            field="sensor-height"
            value={framing.sensorHeightMm}
            min={3}
            max={100}
            step={0.1}
            digits={2}
            onCommit={(value) => value !== null && onPut({ sensorHeightMm: value })}
          />
        </>
      ) : null}
    </>
  );
}
