import type { ReactNode } from 'react';

import { miredFromKelvin } from '../../../core/colour/mired.ts';
import type { Head } from '../../../core/plan/kit.ts';
import { flashDurations } from '../../../core/plan/setup-lights.ts';
import { flashDurationAtS, powerControl, type PowerControl } from '../../../core/strobe/sync.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { Switch } from '../../ui/Switch.tsx';
import { flashTimeText } from '../../ui/timing-text.ts';

type HeadFieldsProps = {
  readonly head: Head;
  readonly onChange: (fields: Partial<Head>) => void;
};

const CONTROL_TEXTS: Readonly<Record<PowerControl, string>> = {
  'tail-cut': 'Shorter at low power: its tail is cut.',
  voltage: 'Longer at low power: its voltage is lowered.',
  'not-known': 'With both ends typed in, the lengths between follow.',
};

const DAYLIGHT_K = 5500;

/** How long its flash is, how it goes above sync speed, and its colour. */
export function HeadFlashFields({ head, onChange }: HeadFieldsProps): ReactNode {
  const known = flashDurations(head);
  const halfS = flashDurationAtS({ ...known, minPowerStops: head.minPowerStops }, -1);
  const bluerMired = Math.round(miredFromKelvin(DAYLIGHT_K) - miredFromKelvin(head.flashKelvin));
  return (
    <>
      <NumberField
        label="Flash duration t0.1 at full"
        field="duration"
        unit="s"
        optional
        min={1e-5}
        max={1 / 20}
        step={0.001}
        value={head.flashDurationS}
        note="longer than the shutter: part of it is cut off; about 3.3 times a t0.5"
        onCommit={(flashDurationS) => onChange({ flashDurationS })}
      />
      <NumberField
        label="Flash duration t0.1 at lowest"
        field="duration-lowest"
        unit="s"
        optional
        min={1e-6}
        max={1 / 20}
        step={0.0001}
        digits={6}
        value={head.flashDurationLowestS}
        note={CONTROL_TEXTS[powerControl(known)]}
        onCommit={(flashDurationLowestS) => onChange({ flashDurationLowestS })}
      />
      <Switch
        label="Has high-speed sync"
        field="hss"
        on={head.hssLossStops !== null}
        onTurn={(on) => onChange({ hssLossStops: on ? 2 : null, hssMeasured: false })}
      />
      {head.hssLossStops === null ? null : (
        <NumberField
          label="High-speed sync costs"
          field="hss-loss"
          unit="stops"
          min={0}
          max={5}
          step={0.1}
          value={head.hssLossStops}
          note={
            head.hssMeasured
              ? 'measured'
              : 'assumed, 1.5 to 2.3 in print; the same at every faster shutter'
          }
          onCommit={(loss) => loss !== null && onChange({ hssLossStops: loss, hssMeasured: true })}
        />
      )}
      <NumberField
        label="Colour of its flash"
        field="flash-kelvin"
        unit="K"
        min={3000}
        max={8000}
        step={50}
        value={head.flashKelvin}
        onCommit={(flashKelvin) => flashKelvin !== null && onChange({ flashKelvin })}
      />
      <p className="quiet">
        At half power t0.1 is{' '}
        <span data-figure="half-power-duration">
          {halfS === null ? 'not known' : flashTimeText(halfS)}
        </span>
        . Its flash is{' '}
        <span data-figure="flash-colour">
          {Math.abs(bluerMired)} mired {bluerMired < 0 ? 'warmer' : 'bluer'}
        </span>{' '}
        than daylight of {DAYLIGHT_K} K.
      </p>
    </>
  );
}
