import type { ReactNode } from 'react';

type SwitchProps = {
  readonly label: string;
  readonly on: boolean;
  readonly disabled?: boolean;
  readonly field?: string;
  readonly onTurn: (on: boolean) => void;
};

export function Switch({ label, on, disabled, field, onTurn }: SwitchProps): ReactNode {
  return (
    <label className="switch">
      <input
        type="checkbox"
        data-field={field}
        checked={on}
        disabled={disabled === true}
        onChange={(event) => onTurn(event.currentTarget.checked)}
      />
      {label}
    </label>
  );
}
