import type { ReactNode } from 'react';

import { formatNd, parseEngravedFilter } from '../../../core/exposure/lens-filter.ts';
import { strongestStops } from '../../../core/colour/filter-stack.ts';
import { editKitItem } from '../../../core/plan/edits.ts';
import type { Filter } from '../../../core/plan/kit.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** What a kind has that others have not begins as something usual, and goes with it. */
const fieldsOfKind = (kind: Filter['kind'], { stops }: Filter): Partial<Filter> => ({
  kind,
  maxStops: kind === 'variable-nd' ? Math.min(20, stops + USUAL_TURN_STOPS) : null,
});

const USUAL_TURN_STOPS = 3;

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
        onChoose={(kind) => set(fieldsOfKind(kind, filter))}
      />
      <TextField
        label="Engraved on its ring"
        field="engraving"
        maxLength={40}
        value={filter.engraving}
        onCommit={(engraving) => set({ engraving })}
      />
      <NumberField
        label={filter.kind === 'variable-nd' ? 'Takes at its weakest' : 'Takes'}
        field="filter-stops"
        unit="stops"
        min={0}
        max={20}
        step={0.1}
        value={filter.stops}
        onCommit={(stops) => stops !== null && set({ stops })}
      />
      {filter.kind === 'variable-nd' ? (
        <NumberField
          label="Takes at its strongest"
          field="filter-max-stops"
          unit="stops"
          min={0}
          max={20}
          step={0.1}
          value={filter.maxStops}
          onCommit={(maxStops) => set({ maxStops })}
        />
      ) : null}
      <NumberField
        label="Shift, warmer positive"
        field="filter-mired"
        unit="mired"
        min={-400}
        max={400}
        step={1}
        value={filter.miredShift}
        onCommit={(miredShift) => miredShift !== null && set({ miredShift })}
      />
      <NumberField
        label="Green more, magenta negative"
        field="filter-green"
        unit="stops"
        min={-3}
        max={3}
        step={0.1}
        value={filter.greenStops}
        onCommit={(greenStops) => greenStops !== null && set({ greenStops })}
      />
      <NumberField
        label="Depth of its ring"
        field="filter-ring"
        unit="mm"
        min={0}
        max={30}
        step={0.5}
        value={filter.ringMm}
        onCommit={(ringMm) => ringMm !== null && set({ ringMm })}
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
      {filter.kind === 'nd' || filter.kind === 'graduated-nd' ? (
        <p className="quiet">Shown as {formatNd(filter.stops)}.</p>
      ) : null}
      {filter.kind === 'variable-nd' ? (
        <p className="quiet">
          Turns from <span data-figure={`weakest-${id}`}>{formatNd(filter.stops)}</span> to{' '}
          <span data-figure={`strongest-${id}`}>{formatNd(strongestStops(filter))}</span>
          {filter.maxStops !== null && filter.maxStops < filter.stops
            ? '; its strongest is less than its weakest, so it is taken not to vary'
            : ''}
          .
        </p>
      ) : null}
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
