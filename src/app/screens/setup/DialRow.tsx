import type { ReactNode } from 'react';

import { readNumber } from '../../ui/read-number.ts';
import { TextField } from '../../ui/TextField.tsx';
import { Pin } from './Pin.tsx';

type DialRowProps = {
  readonly what: 'shutter' | 'aperture' | 'iso';
  readonly label: string;
  readonly bounds: { readonly min: number; readonly max: number; readonly unit: string };
  /** What the recipe sets; null without one. */
  readonly shown: number | null;
  readonly pinned: number | null;
  /** What a pin takes when it is set. */
  readonly pinsAt: number;
  readonly write: (value: number) => string;
  readonly onPin: (value: number | null) => void;
};

/** One dial of the camera; pinned, it can be typed. */
export function DialRow(props: DialRowProps): ReactNode {
  const { what, label, shown, pinned, pinsAt, write, onPin } = props;
  const read = (text: string): ReturnType<typeof readNumber> =>
    readNumber(text.replace(/^iso/i, ''), { ...props.bounds, optional: false });
  return (
    <div className="dial" data-pinned={pinned !== null}>
      {pinned === null ? (
        <>
          <span className="label">{label}</span>
          <span className="value">{shown === null ? 'free' : write(shown)}</span>
        </>
      ) : (
        <TextField
          label={label}
          field={`pinned-${what}`}
          value={write(pinned)}
          maxLength={24}
          faultOf={(text) => {
            const value = read(text);
            return value.ok ? null : value.problem;
          }}
          onCommit={(text) => {
            const value = read(text);
            if (value.ok && value.value !== null) onPin(value.value);
          }}
        />
      )}
      <Pin
        what={what}
        name={label === 'ISO' ? 'ISO' : `the ${what}`}
        on={pinned !== null}
        onTurn={(on) => onPin(on ? pinsAt : null)}
      />
    </div>
  );
}
