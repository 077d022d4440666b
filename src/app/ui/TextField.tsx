import { useId, useState, type ReactNode } from 'react';

type TextFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly lines?: number;
  readonly maxLength?: number;
  /** What is wrong with a text, or null. */
  readonly faultOf?: (text: string) => string | null;
  readonly field?: string;
  readonly onCommit: (text: string) => void;
};

/** A text, written back when it is left; a wrong one is kept and named, and changes nothing. */
export function TextField(props: TextFieldProps): ReactNode {
  const { label, value, lines = 1, maxLength = 4000, faultOf, field } = props;
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const fault = draft === null ? null : (faultOf?.(draft) ?? null);

  const commit = (): void => {
    if (draft === null || fault !== null) return;
    setDraft(null);
    if (draft !== value) props.onCommit(draft);
  };

  const shared = {
    id,
    maxLength,
    value: draft ?? value,
    'data-field': field,
    'aria-invalid': fault !== null,
    'aria-describedby': fault === null ? undefined : `${id}-fault`,
    onBlur: commit,
  };

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {lines > 1 ? (
        <textarea
          {...shared}
          rows={lines}
          onChange={(event) => setDraft(event.currentTarget.value)}
        />
      ) : (
        <input
          {...shared}
          type="text"
          autoComplete="off"
          onChange={(event) => setDraft(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape') setDraft(null);
          }}
        />
      )}
      {fault === null ? null : (
        <span className="fault" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}
