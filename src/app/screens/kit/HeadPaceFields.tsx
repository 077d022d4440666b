import type { ReactNode } from 'react';

import type { Head } from '../../../core/plan/kit.ts';
import { lightPace } from '../../../core/plan/light-pace.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { popsFromWattHours } from '../../../core/strobe/battery.ts';
import { useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { paceText } from '../../ui/timing-text.ts';

type HeadFieldsProps = {
  readonly head: Head;
  readonly onChange: (fields: Partial<Head>) => void;
};

/** How fast it fires, for how long, off which battery, and what it weighs. */
export function HeadPaceFields({ head, onChange }: HeadFieldsProps): ReactNode {
  const { batteries } = useKit();
  const atHalf = lightPace({ lightId: '', head, powerStops: Math.max(-1, head.minPowerStops) }, 1);
  const battery = head.batteryId === null ? null : (batteries[head.batteryId] ?? null);
  const expected =
    battery === null || head.energyWs === null
      ? null
      : popsFromWattHours({ wattHours: battery.wattHours, energyWs: head.energyWs });
  return (
    <>
      <NumberField
        label="Recycle at full power"
        field="recycle"
        unit="s"
        min={0.05}
        max={60}
        step={0.1}
        value={head.recycleS}
        onCommit={(recycleS) => recycleS !== null && onChange({ recycleS })}
      />
      <NumberField
        label="Full-power pops per charge"
        field="pops"
        min={1}
        max={100000}
        step={10}
        value={head.popsPerCharge}
        note={
          expected === null ? undefined : (
            <span data-figure="pops-expected">
              about {Math.round(expected / 10) * 10} by the battery’s watt-hours, 70 % of them in
              the flash
            </span>
          )
        }
        onCommit={(pops) => pops !== null && onChange({ popsPerCharge: Math.round(pops) })}
      />
      <NumberField
        label="Full pops in a row before it rests"
        field="burst-pops"
        optional
        min={1}
        max={10000}
        step={5}
        value={head.burstPops}
        note="of its manual; empty where it states none"
        onCommit={(pops) => onChange({ burstPops: pops === null ? null : Math.round(pops) })}
      />
      {head.burstPops === null ? null : (
        <NumberField
          label="Then it rests"
          field="burst-rest"
          unit="s"
          min={0}
          max={3600}
          step={10}
          value={head.burstRestS}
          onCommit={(burstRestS) => burstRestS !== null && onChange({ burstRestS })}
        />
      )}
      <SelectField
        label="Battery"
        field="head-battery"
        value={head.batteryId ?? ''}
        options={[
          { value: '', text: 'none named' },
          ...inOrder(batteries).map(([value, { name }]) => ({ value, text: name })),
        ]}
        onChoose={(batteryId) => onChange({ batteryId: batteryId === '' ? null : batteryId })}
      />
      <NumberField
        label="Weighs"
        field="head-mass"
        unit="kg"
        min={0}
        max={50}
        step={0.1}
        digits={2}
        value={head.massKg}
        note={head.massKg === 0 ? '0: not stated' : undefined}
        onCommit={(massKg) => massKg !== null && onChange({ massKg })}
      />
      <p className="quiet">
        At half power: <span data-figure="half-power-pace">{paceText(atHalf)}</span>.
      </p>
    </>
  );
}
