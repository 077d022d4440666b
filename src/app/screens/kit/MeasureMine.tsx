import { useState, type ReactNode } from 'react';

import { exactFNumber, formatMeterAperture } from '../../../core/exposure/aperture-scale.ts';
import type { Head, Reading } from '../../../core/plan/kit.ts';
import { headWithModifier } from '../../../core/plan/modified-head.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { faceAreaM2, headFromReading } from '../../../core/strobe/head.ts';
import { useKit } from '../../state/documents.tsx';
import { metres, signedTenths } from '../../ui/figure-text.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { Switch } from '../../ui/Switch.tsx';

type MeasureMineProps = {
  readonly head: Head;
  readonly onChange: (readings: Head['readings']) => void;
};

const FIRST_READING: Reading = {
  fNumber: 11,
  iso: 100,
  distanceM: 2,
  ambientFNumber: null,
  powerStops: 0,
  diffuser: true,
  baffle: false,
  grid: false,
};

/** One flash-meter reading at a known distance makes the head's figure the user's own. */
export function MeasureMine({ head, onChange }: MeasureMineProps): ReactNode {
  const kit = useKit();
  const modifiers = inOrder(kit.modifiers);
  const [modifierId, setModifierId] = useState(modifiers[0]?.[0] ?? '');
  const [draft, setDraft] = useState<Reading | null>(null);
  const modifier = kit.modifiers[modifierId];
  if (modifier === undefined) return <p>Add a modifier first: a reading is made through one.</p>;
  const stored = head.readings[modifierId];
  const reading = draft ?? stored ?? FIRST_READING;
  const change = (fields: Partial<Reading>): void => setDraft({ ...reading, ...fields });
  const figure = headFromReading({ ...reading, faceAreaM2: faceAreaM2(modifier) });

  const { [modifierId]: _, ...others } = head.readings;
  const rated = headWithModifier({
    head: { ...head, readings: others },
    modifier,
    modifierId,
    gel: null,
    light: reading,
  });
  return (
    <fieldset className="measure">
      <legend>Measure mine</legend>
      <p className="quiet">
        Flash alone or with ambient, at the subject: meter flat to the light, tape from the
        modifier’s face to the meter, no lens filter.{' '}
        {stored ? 'A reading is kept.' : 'No reading yet.'}
      </p>
      <div className="fields">
        <SelectField
          label="Through"
          field="reading-modifier"
          value={modifierId}
          options={modifiers.map(([value, { name }]) => ({ value, text: name }))}
          onChoose={(id) => {
            setModifierId(id);
            setDraft(null);
          }}
        />
        <NumberField
          label="Meter reads f/"
          field="reading-f-number"
          min={0.7}
          max={256}
          step={0.1}
          value={reading.fNumber}
          digits={2}
          note={formatMeterAperture(reading.fNumber)}
          onCommit={(fNumber) => fNumber !== null && change({ fNumber: exactFNumber(fNumber) })}
        />
        <NumberField
          label="ISO on the meter"
          field="reading-iso"
          min={3}
          max={409600}
          step={100}
          value={reading.iso}
          onCommit={(iso) => iso !== null && change({ iso })}
        />
        <NumberField
          label="Distance"
          field="reading-distance"
          unit="m"
          min={0.2}
          max={30}
          step={0.05}
          value={reading.distanceM}
          onCommit={(distanceM) => distanceM !== null && change({ distanceM })}
        />
        <NumberField
          label="Ambient alone reads f/"
          field="reading-ambient"
          optional
          min={0.1}
          max={256}
          step={0.1}
          value={reading.ambientFNumber}
          note="same shutter; empty when it does not register"
          onCommit={(ambientFNumber) => change({ ambientFNumber })}
        />
        <NumberField
          label="Power"
          field="reading-power"
          unit="stops from full"
          min={-12}
          max={0}
          step={1}
          value={reading.powerStops}
          onCommit={(powerStops) => powerStops !== null && change({ powerStops })}
        />
        <Switch
          label="Diffuser on"
          field="reading-diffuser"
          disabled={modifier.diffuserStops === null}
          on={reading.diffuser && modifier.diffuserStops !== null}
          onTurn={(diffuser) => change({ diffuser })}
        />
        <Switch
          label="Baffle in"
          field="reading-baffle"
          disabled={modifier.baffleStops === null}
          on={reading.baffle && modifier.baffleStops !== null}
          onTurn={(baffle) => change({ baffle })}
        />
        <Switch
          label="Grid on"
          field="reading-grid"
          disabled={modifier.gridStops === null}
          on={reading.grid && modifier.gridStops !== null}
          onTurn={(grid) => change({ grid })}
        />
      </div>
      {figure.ok ? (
        <p>
          That makes a guide number of{' '}
          <strong data-figure="reading-guide-number">{metres(figure.value.guideNumberM)}</strong> at
          full power, ISO 100, through this modifier:{' '}
          <span data-figure="reading-against-rated">
            {signedTenths(
              2 * Math.log2(figure.value.guideNumberM / rated.guideNumberM) + rated.lossStops,
            )}
          </span>{' '}
          stops against the {rated.origin === 'watt-seconds' ? 'watt-second guess' : 'rated figure'}
          .
        </p>
      ) : (
        <p className="fault">{figure.problem.sentence}</p>
      )}
      <div>
        <button
          type="button"
          className="first"
          data-keep-reading
          disabled={!figure.ok}
          onClick={() => {
            onChange({ ...head.readings, [modifierId]: reading });
            setDraft(null);
          }}
        >
          Keep this reading
        </button>{' '}
        {stored === undefined ? null : (
          <button
            type="button"
            data-drop-reading
            onClick={() => {
              onChange(others);
              setDraft(null);
            }}
          >
            Drop the reading
          </button>
        )}
      </div>
    </fieldset>
  );
}
