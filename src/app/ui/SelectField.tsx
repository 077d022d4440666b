import { useId, type ReactNode } from 'react';

type SelectFieldProps<Value extends string> = {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly text: string }[];
  readonly field?: string;
  readonly onChoose: (value: Value) => void;
};

export function SelectField<Value extends string>(props: SelectFieldProps<Value>): ReactNode {
  const { label, value, options, field, onChoose } = props;
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        data-field={field}
        value={value}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.currentTarget.value);
          if (chosen !== undefined) onChoose(chosen.value);
        }}
      >
        {options.some((option) => option.value === value) ? null : (
          <option value={value}>not in the kit</option>
        )}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}
