import type { ReactNode } from 'react';

import { formatShutter } from '../../../core/exposure/shutter-scale.ts';
import { TextField } from '../../ui/TextField.tsx';
import { readNumber } from '../../ui/read-number.ts';

type ShutterFieldProps = {
  readonly label: string;
  readonly field: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly onCommit: (shutterS: number) => void;
};

/** A shutter time as it is spoken: 1/250, 0.5 s, 30. */
export function ShutterField(props: ShutterFieldProps): ReactNode {
  const { label, field, value, min, max, onCommit } = props;
  const read = (text: string): ReturnType<typeof readNumber> =>
    readNumber(text, { min: min * 0.97, max: max * 1.03, unit: 's', optional: false });
  return (
    <TextField
      label={label}
      field={field}
      maxLength={12}
      value={formatShutter(value)}
      faultOf={(text) => {
        const seconds = read(text);
        return seconds.ok
          ? null
          : `found ‘${text.trim()}’, expected a shutter from ${formatShutter(min)} to ${formatShutter(max)}, as 1/250 or 0.5 s`;
      }}
      onCommit={(text) => {
        const seconds = read(text);
        if (seconds.ok && seconds.value !== null)
          onCommit(Math.min(max, Math.max(min, seconds.value)));
      }}
    />
  );
}
