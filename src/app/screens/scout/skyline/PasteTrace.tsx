import { useId, useState, type ReactNode } from 'react';

import { readTraceText } from '../../../../core/skyline/trace-text.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { KeepTrace, type KeepAnswer } from './KeepTrace.tsx';
import { lineFaultText } from './trace-words.ts';

type PasteTraceProps = {
  readonly onKeep: (keep: KeepAnswer, points: Skyline) => void;
};

const REST = {
  add: 'Straight between all points, old and new.',
  replace: 'Straight between the points, closed through north.',
};

/** Many pairs of azimuth and altitude at once. */
export function PasteTrace({ onKeep }: PasteTraceProps): ReactNode {
  const id = useId();
  const [text, setText] = useState('');
  const read = text.trim() === '' ? null : readTraceText(text);
  const faults = read === null || read.ok ? [] : read.problem;
  return (
    <>
      <div className="field">
        <label htmlFor={id}>Azimuth and altitude in degrees, a pair to a line</label>
        <textarea
          id={id}
          rows={5}
          data-field="trace-text"
          placeholder={'212.5 4.3\n230 6'}
          value={text}
          aria-invalid={faults.length > 0}
          aria-describedby={faults.length > 0 ? `${id}-faults` : undefined}
          onChange={(event) => setText(event.currentTarget.value)}
        />
      </div>
      {faults.length === 0 ? null : (
        <ul id={`${id}-faults`} role="alert">
          {faults.map((fault) => (
            <li key={`${fault.line} ${fault.sentence}`} className="fault">
              {lineFaultText(fault)}
            </li>
          ))}
        </ul>
      )}
      {read?.ok === true ? (
        <KeepTrace
          runs={[read.value]}
          origin="points entered by hand"
          restWords={REST}
          onKeep={(keep) => onKeep(keep, read.value)}
          onDrop={() => setText('')}
        />
      ) : null}
    </>
  );
}
