import type { ReactNode } from 'react';

import { exactFNumber, formatMeterAperture } from '../../../core/exposure/aperture-scale.ts';
import type { Head, Modifier, Reading } from '../../../core/plan/kit.ts';
import { PARTS } from '../../../core/plan/packed-items.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { powerText } from '../../ui/power-text.ts';
import { SelectField } from '../../ui/SelectField.tsx';
import { Switch } from '../../ui/Switch.tsx';

type MeasureStepsProps = {
  readonly head: Head;
  readonly modifierId: string;
  readonly modifier: Modifier;
  readonly reading: Reading;
  readonly onModifier: (id: string) => void;
  readonly onChange: (fields: Partial<Reading>) => void;
};

const PART_LABELS = { diffuser: 'Diffuser on', baffle: 'Baffle in', grid: 'Grid on' } as const;

/** What to do in which order, each step with what it asks for. */
export function MeasureSteps(props: MeasureStepsProps): ReactNode {
  const { head, modifierId, modifier, reading, onModifier, onChange } = props;
  const { modifiers } = useKit();
  return (
    <ol className="measure-steps">
      <li>
        <p>Put the modifier on with the parts you use, and set the head to full power.</p>
        <div className="fields">
          <SelectField
            label="Through"
            field="reading-modifier"
            value={modifierId}
            options={inOrder(modifiers).map(([value, { name }]) => ({ value, text: name }))}
            onChoose={onModifier}
          />
          {PARTS.map((part) => (
            <Switch
              key={part}
              label={PART_LABELS[part]}
              field={`reading-${part}`}
              disabled={modifier[`${part}Stops`] === null}
              on={reading[part] && modifier[`${part}Stops`] !== null}
              onTurn={(on) => onChange({ [part]: on })}
            />
          ))}
          <NumberField
            label="Power"
            field="reading-power"
            unit="stops from full"
            min={-12}
            max={0}
            step={1}
            value={reading.powerStops}
            note={`shown as ${powerText(reading.powerStops, head).dial}`}
            onCommit={(powerStops) => powerStops !== null && onChange({ powerStops })}
          />
        </div>
      </li>
      <li>
        <p>
          Tape from the modifier’s face to where a face would be. Hold the meter there, its dome
          retracted or its flat disc on, turned to the light; no lens filter before it. On its axis,
          away from bright walls.
        </p>
        <div className="fields">
          <NumberField
            label="Distance"
            field="reading-distance"
            unit="m"
            min={0.2}
            max={30}
            step={0.05}
            value={reading.distanceM}
            onCommit={(distanceM) => distanceM !== null && onChange({ distanceM })}
          />
        </div>
      </li>
      <li>
        <p>
          Set the meter: the ISO, and a shutter your camera syncs at, not shorter than the flash
          lasts. Ambient first, the head off; leave it empty when nothing registers.
        </p>
        <div className="fields">
          <NumberField
            label="ISO on the meter"
            field="reading-iso"
            min={3}
            max={409600}
            step={100}
            value={reading.iso}
            onCommit={(iso) => iso !== null && onChange({ iso })}
          />
          <NumberField
            label="Ambient alone reads f/"
            field="reading-ambient"
            optional
            min={0.1}
            max={256}
            step={0.1}
            value={reading.ambientFNumber}
            digits={2}
            note="same shutter"
            onCommit={(fNumber) =>
              onChange({ ambientFNumber: fNumber === null ? null : exactFNumber(fNumber) })
            }
          />
        </div>
      </li>
      <li>
        <p>Then the flash, same meter, same place: the whole of what it reads.</p>
        <div className="fields">
          <NumberField
            label="Meter reads f/"
            field="reading-f-number"
            min={0.7}
            max={256}
            step={0.1}
            value={reading.fNumber}
            digits={2}
            note={formatMeterAperture(reading.fNumber)}
            onCommit={(fNumber) => fNumber !== null && onChange({ fNumber: exactFNumber(fNumber) })}
          />
        </div>
      </li>
    </ol>
  );
}
