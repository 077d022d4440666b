import { useState, type ReactNode } from 'react';

import type { TraceWay } from '../../../../core/plan/skyline-edits.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { SelectField } from '../../../ui/SelectField.tsx';
import { runsText } from './trace-words.ts';

export type KeepAnswer = { readonly way: TraceWay; readonly origin: string };

type KeepTraceProps = {
  readonly runs: readonly Skyline[];
  readonly origin: string;
  /** What the rest of the round becomes, by the way it is kept. */
  readonly restWords: Readonly<Record<TraceWay, string>>;
  readonly onKeep: (keep: KeepAnswer) => void;
  readonly onDrop: () => void;
};

export const RUN_REST: Readonly<Record<TraceWay, string>> = {
  add: 'Beside it the trace stays as it is.',
  replace: 'Beside it the trace becomes level.',
};

/** A new trace before it is one: what it holds, whether it replaces the old one, keep or drop. */
export function KeepTrace({ runs, origin, restWords, onKeep, onDrop }: KeepTraceProps): ReactNode {
  const [way, setWay] = useState<TraceWay>('add');
  return (
    <div className="keep-trace">
      <p data-figure="new-trace">{runsText(runs)}</p>
      <SelectField
        label="The trace that is there"
        field="trace-way"
        value={way}
        options={[
          { value: 'add', text: 'stays, this is added' },
          { value: 'replace', text: 'goes, this takes its place' },
        ]}
        onChoose={setWay}
      />
      <p className="quiet">{restWords[way]}</p>
      <p className="choices">
        <button
          type="button"
          className="first"
          data-keep-trace
          onClick={() => onKeep({ way, origin })}
        >
          Keep it
        </button>
        <button type="button" data-drop-trace onClick={onDrop}>
          Drop it
        </button>
      </p>
    </div>
  );
}
