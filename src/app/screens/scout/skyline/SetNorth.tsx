import { useState, type ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { sunPosition } from '../../../../core/sun-moon/sun-position.ts';
import { wrapDeg180, wrapDeg360 } from '../../../../core/units/angle.ts';
import { useServices } from '../../../state/services.ts';
import { CAUTIONS } from '../../../ui/cautions.ts';
import { tenths } from '../../../ui/figure-text.ts';
import { NumberField } from '../../../ui/NumberField.tsx';
import { placeOf } from '../sun-day.ts';

type SetNorthProps = {
  readonly spot: Spot;
  /** Where the phone points by its own count, now; null before it says. */
  readonly azimuthNow: () => number | null;
  readonly isSet: boolean;
  readonly onSet: (offsetDeg: number | null) => void;
};

/** The phone's north by something of known bearing: a steeple on the map, or the sun. */
export function SetNorth({ spot, azimuthNow, isSet, onSet }: SetNorthProps): ReactNode {
  const { nowMs } = useServices();
  const [bearingDeg, setBearing] = useState<number | null>(null);
  const sun = sunPosition(nowMs(), placeOf(spot));
  const isUp = sun.apparentAltitudeDeg > 0;
  const setBy = (trueDeg: number): void => {
    const azimuthDeg = azimuthNow();
    if (azimuthDeg !== null) onSet(wrapDeg180(trueDeg - azimuthDeg));
  };
  return (
    <div className="set-north">
      <p className="quiet">
        Point the phone at something whose bearing you know, a steeple on the map or the sun, and
        press while it stands there.
      </p>
      <NumberField
        label="Its bearing from true north"
        unit="°"
        field="north-bearing"
        value={bearingDeg}
        min={0}
        max={360}
        step={1}
        digits={1}
        optional
        onCommit={(value) => setBearing(value === null ? null : wrapDeg360(value))}
      />
      <p className="choices">
        <button
          type="button"
          data-set-north
          disabled={bearingDeg === null}
          onClick={() => bearingDeg !== null && setBy(bearingDeg)}
        >
          It points there now
        </button>
        <button
          type="button"
          data-set-north-by-sun
          disabled={!isUp}
          onClick={() => setBy(sunPosition(nowMs(), placeOf(spot)).azimuthDeg)}
        >
          {isUp ? `It points at the sun, ${tenths(sun.azimuthDeg)}°` : 'The sun is down'}
        </button>
        {isSet ? (
          <button type="button" data-unset-north onClick={() => onSet(null)}>
            Back to the phone’s own north
          </button>
        ) : null}
      </p>
      <p className="caution">
        {CAUTIONS[0]} Turn until the phone’s shadow is at its narrowest instead of looking.
      </p>
    </div>
  );
}
