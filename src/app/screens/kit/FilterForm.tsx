import type { ReactNode } from 'react';

import { formatNd, parseEngravedFilter } from '../../../core/exposure/lens-filter.ts';
import { editKitItem } from '../../../core/plan/edits.ts';
import type { Filter } from '../../../core/plan/kit.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { TextField } from '../../ui/TextField.tsx';

export function FilterForm({ id }: { readonly id: string }): ReactNode {
  const filter = useKit().filters[id];
  const edit = useEditKit();
  if (filter === undefined) return null;
  const set = (fields: Partial<Filter>): void =>
    edit(`change ${filter.name}`, editKitItem('filters', id, fields));
  const engraved = parseEngravedFilter(filter.engraving);
  const differs =
    filter.kind === 'nd' && engraved.ok && Math.abs(engraved.value - filter.stops) > 0.15;
  return (
    <div className="fields">
      <SelectField
        label="Kind"
        field="filter-kind"
        value={filter.kind}
        options={[
          { value: 'nd', text: 'neutral density' },
          { value: 'variable-nd', text: 'variable neutral density' },
          { value: 'graduated-nd', text: 'graduated neutral density' },
          { value: 'polariser', text: 'polariser' },
          { value: 'colour', text: 'colour' },
        ]}
        onChoose={(kind) => set({ kind })}
      />
      <TextField
        label="Engraved on its ring"
        field="engraving"
        maxLength={40}
        value={filter.engraving}
        onCommit={(engraving) => set({ engraving })}
      />
      <NumberField
        label="Takes"
        field="filter-stops"
        unit="stops"
        min={0}
        max={20}
        step={0.1}
        value={filter.stops}
        onCommit={(stops) => stops !== null && set({ stops })}
      />
      <NumberField
        label="Thread"
        field="filter-thread"
        unit="mm"
        optional
        min={20}
        max={200}
        step={1}
        value={filter.threadMm}
        onCommit={(threadMm) => set({ threadMm })}
      />
      {filter.kind === 'nd' ? <p className="quiet">Shown as {formatNd(filter.stops)}.</p> : null}
      {differs && engraved.ok ? (
        <p>
          The ring says {filter.engraving}, which is {engraved.value.toFixed(1)} stops.{' '}
          <button
            type="button"
            data-take-engraving
            onClick={() => set({ stops: Math.round(engraved.value * 100) / 100 })}
          >
            Take {engraved.value.toFixed(1)} stops
          </button>
        </p>
      ) : null}
    </div>
  );
}
