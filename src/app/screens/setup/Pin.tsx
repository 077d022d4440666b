import type { ReactNode } from 'react';

type PinProps = {
  /** What it holds, for the check and for screen readers. */
  readonly what: string;
  readonly name: string;
  readonly on: boolean;
  readonly onTurn: (on: boolean) => void;
};

/** Holds a value as decided; the rest is solved around it. */
export function Pin({ what, name, on, onTurn }: PinProps): ReactNode {
  return (
    <button
      type="button"
      className="pin"
      aria-pressed={on}
      aria-label={`Pin ${name}`}
      title={on ? `${name} is pinned: free it` : `Pin ${name} as it stands`}
      data-pin={what}
      onClick={() => onTurn(!on)}
    >
      {on ? 'pinned' : 'pin'}
    </button>
  );
}
