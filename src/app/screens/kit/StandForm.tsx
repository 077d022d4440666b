import type { ReactNode } from 'react';

import { editKitItem } from '../../../core/plan/edits.ts';
import type { Stand } from '../../../core/plan/kit.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { StandBallast } from './StandBallast.tsx';

export function StandForm({ id }: { readonly id: string }): ReactNode {
  const stand = useKit().stands[id];
  const edit = useEditKit();
  if (stand === undefined) return null;
  const set = (fields: Partial<Stand>): void =>
    edit(`change ${stand.name}`, editKitItem('stands', id, fields));
  return (
    <>
      <StandBallast stand={stand} />
      <div className="fields">
        <NumberField
          label="Owned"
          field="stand-owned"
          min={1}
          max={20}
          step={1}
          digits={0}
          value={stand.owned}
          onCommit={(owned) => owned !== null && set({ owned })}
        />
        <NumberField
          label="Highest"
          field="stand-height"
          unit="m"
          min={0.2}
          max={12}
          step={0.1}
          value={stand.maxHeightM}
          onCommit={(maxHeightM) => maxHeightM !== null && set({ maxHeightM })}
        />
        <NumberField
          label="Middle to foot of a leg"
          field="stand-spread"
          unit="m"
          min={0.1}
          max={3}
          step={0.05}
          digits={2}
          value={stand.legSpreadM}
          onCommit={(legSpreadM) => legSpreadM !== null && set({ legSpreadM })}
        />
        <SelectField
          label="Legs"
          field="stand-legs"
          value={String(stand.legs) as '3' | '4'}
          options={[
            { value: '3', text: 'three' },
            { value: '4', text: 'four' },
          ]}
          onChoose={(legs) => set({ legs: legs === '3' ? 3 : 4 })}
        />
        <NumberField
          label="Weighs"
          field="stand-mass"
          unit="kg"
          min={0}
          max={100}
          step={0.1}
          digits={2}
          value={stand.massKg}
          onCommit={(massKg) => massKg !== null && set({ massKg })}
        />
        <NumberField
          label="Your limit of gusts"
          field="stand-gust"
          unit="m/s"
          min={1}
          max={40}
          step={1}
          value={stand.maxGustMS}
          onCommit={(maxGustMS) => maxGustMS !== null && set({ maxGustMS })}
        />
      </div>
    </>
  );
}
