import type { ReactNode } from 'react';

import { editKitItem } from '../../../core/plan/edits.ts';
import { POWER_SCALES, type Head, type PowerScale } from '../../../core/plan/kit.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { powerText } from '../../ui/power-text.ts';
import { SelectField } from '../../ui/SelectField.tsx';
import { HeadFigures } from './HeadFigures.tsx';
import { HeadFlashFields } from './HeadFlashFields.tsx';
import { HeadPaceFields } from './HeadPaceFields.tsx';
import { MeasureMine } from './MeasureMine.tsx';

const SCALE_NAMES: Readonly<Record<PowerScale, string>> = {
  fraction: 'fractions, 1/2 + 0.2',
  'stops-below-full': 'full minus stops',
  'numbered-stops': 'numbered stops',
  percent: 'percent',
  'watt-seconds': 'watt-seconds',
};

const STEPS = [
  { value: '0.1', text: 'a tenth of a stop' },
  { value: '0.3333', text: 'a third of a stop' },
  { value: '0.5', text: 'half a stop' },
  { value: '1', text: 'a stop' },
] as const;

export function HeadForm({ id }: { readonly id: string }): ReactNode {
  const head = useKit().heads[id];
  const edit = useEditKit();
  if (head === undefined) return null;
  const set = (fields: Partial<Head>): void =>
    edit(`change ${head.name}`, editKitItem('heads', id, fields));
  const step = STEPS.find(({ value }) => Math.abs(Number(value) - head.stepStops) < 0.02);
  return (
    <>
      <HeadFigures head={head} />
      <MeasureMine headId={id} head={head} onChange={(readings) => set({ readings })} />
      <div className="fields">
        <NumberField
          label="How many of it"
          field="owned"
          min={1}
          max={20}
          step={1}
          value={head.owned}
          onCommit={(owned) => owned !== null && set({ owned: Math.round(owned) })}
        />
        <NumberField
          label="Guide number, rated"
          field="guide-number"
          unit="m, ISO 100"
          optional
          min={0.1}
          max={400}
          step={1}
          value={head.guideNumberM}
          note="with its reflector; off by about a stop"
          onCommit={(guideNumberM) => set({ guideNumberM })}
        />
        <NumberField
          label="Energy"
          field="energy"
          unit="Ws"
          optional
          min={1}
          max={10000}
          step={10}
          value={head.energyWs}
          note="a guess at light, used last"
          onCommit={(energyWs) => set({ energyWs })}
        />
        <SelectField
          label="Power shown as"
          field="scale"
          value={head.scale}
          options={POWER_SCALES.map((value) => ({ value, text: SCALE_NAMES[value] }))}
          onChoose={(scale) => set({ scale })}
        />
        {head.scale === 'numbered-stops' ? (
          <NumberField
            label="Number at full power"
            field="full-number"
            min={1}
            max={20}
            step={1}
            value={head.fullPowerNumber}
            onCommit={(fullPowerNumber) => fullPowerNumber !== null && set({ fullPowerNumber })}
          />
        ) : null}
        <SelectField
          label="Power clicks in"
          field="power-step"
          value={step?.value ?? '0.1'}
          options={STEPS}
          onChoose={(value) => set({ stepStops: value === '0.3333' ? 1 / 3 : Number(value) })}
        />
        <NumberField
          label="Lowest power"
          field="min-power"
          unit="stops from full"
          min={-12}
          max={0}
          step={1}
          value={head.minPowerStops}
          note={`shown as ${powerText(head.minPowerStops, head).dial}`}
          onCommit={(minPowerStops) => minPowerStops !== null && set({ minPowerStops })}
        />
        <HeadFlashFields head={head} onChange={set} />
        <HeadPaceFields head={head} onChange={set} />
      </div>
    </>
  );
}
