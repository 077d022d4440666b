import type { ReactNode } from 'react';

import { wrapDeg360 } from '../../../../core/units/angle.ts';
import { NumberField } from '../../../ui/NumberField.tsx';

export type KnownDirection = {
  readonly azimuthDeg: number | null;
  readonly altitudeDeg: number | null;
};

type KnownPointFieldsProps = {
  readonly number: 1 | 2;
  readonly isMarked: boolean;
  readonly isMarking: boolean;
  readonly known: KnownDirection;
  readonly onMark: () => void;
  readonly onKnown: (known: KnownDirection) => void;
};

/** One of the two points of the photo whose direction is known. */
export function KnownPointFields(props: KnownPointFieldsProps): ReactNode {
  const { number, isMarked, isMarking, known, onMark, onKnown } = props;
  return (
    <div className="known-point">
      <button type="button" aria-pressed={isMarking} data-mark={number} onClick={onMark}>
        {isMarked ? `Move point ${number}` : `Mark point ${number}`}
      </button>
      <NumberField
        label={`Bearing of ${number}`}
        unit="°"
        field={`known-azimuth-${number}`}
        value={known.azimuthDeg}
        min={-360}
        max={360}
        step={1}
        digits={2}
        optional
        onCommit={(value) =>
          onKnown({ ...known, azimuthDeg: value === null ? null : wrapDeg360(value) })
        }
      />
      <NumberField
        label={`Altitude of ${number}`}
        unit="°"
        field={`known-altitude-${number}`}
        value={known.altitudeDeg}
        min={-45}
        max={85}
        step={0.5}
        digits={2}
        optional
        onCommit={(altitudeDeg) => onKnown({ ...known, altitudeDeg })}
      />
    </div>
  );
}
