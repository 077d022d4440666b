import { useId, useState, type KeyboardEvent, type ReactNode } from 'react';

import { readNumber } from './read-number.ts';

type NumberFieldProps = {
  readonly label: string;
  readonly value: number | null;
  readonly unit?: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** Digits shown after the point. */
  readonly digits?: number;
  /** The field may be left empty; onCommit is then called with null. */
  readonly optional?: boolean;
  readonly note?: ReactNode;
  readonly field?: string;
  readonly onCommit: (value: number | null) => void;
};

/**
 * A number typed by hand. What is typed is kept until it is right; what is wrong is said beside
 * it and changes nothing.
 */
export function NumberField(props: NumberFieldProps): ReactNode {
  const { label, value, unit, min, max, step, digits, note, field } = props;
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const shown = draft ?? (value === null ? '' : written(value, digits));

  const commit = (text: string): void => {
    const read = readNumber(text, {
      min,
      max,
      unit: unit ?? '',
      optional: props.optional === true,
    });
    if (!read.ok) {
      setDraft(text);
      setFault(read.problem);
      return;
    }
    setDraft(null);
    setFault(null);
    if (read.value !== value) props.onCommit(read.value);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') commit(event.currentTarget.value);
    if (event.key === 'Escape') {
      setDraft(null);
      setFault(null);
    }
    const turn = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (turn !== 0 && value !== null && draft === null) {
      event.preventDefault();
      const steps = turn * (event.shiftKey ? 10 : 1);
      commit(String(Number(Math.min(max, Math.max(min, value + steps * step)).toFixed(6))));
    }
  };

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          data-field={field}
          value={shown}
          aria-invalid={fault !== null}
          aria-describedby={fault === null ? undefined : `${id}-fault`}
          onChange={(event) => setDraft(event.currentTarget.value)}
          onBlur={(event) => draft !== null && commit(event.currentTarget.value)}
          onKeyDown={onKeyDown}
        />
        {unit === undefined ? null : <span className="unit">{unit}</span>}
      </span>
      {note === undefined ? null : <span className="quiet">{note}</span>}
      {fault === null ? null : (
        <span className="fault" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}

/** What binary fractions add is not shown. */
const MOST_DIGITS = 5;

const written = (value: number, digits: number | undefined): string =>
  String(Number(value.toFixed(digits ?? MOST_DIGITS))).replace('-', '−');
