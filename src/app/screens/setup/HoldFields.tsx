import type { ReactNode } from 'react';

import { HOLD_REFERENCES } from '../../../core/plan/setup-schema.ts';
import { isClock } from './read-clock.ts';
import { HOLD_WORDS } from '../../ui/hold-words.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { Switch } from '../../ui/Switch.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { AskedProps } from './asked-props.ts';
import { Group, WithPin } from './Group.tsx';
import { Pin } from './Pin.tsx';
import { look } from '../../state/view.ts';
import { useSetupEdit } from './use-setup-edit.ts';

/** How dark the sky is held, how far the unlit face lies under, and when. */
export function HoldFields({ setupId, setup }: AskedProps): ReactNode {
  const put = useSetupEdit(setupId);
  return (
    <Group title="Hold and time" id="hold">
      <WithPin
        pin={
          <Pin
            what="hold"
            name="the hold"
            on={setup.holdPinned}
            onTurn={(on) => put('hold pin', { holdPinned: on })}
          />
        }
      >
        <NumberField
          label="Hold the sky under"
          field="hold-stops"
          value={setup.holdStops}
          unit="stops"
          min={-3}
          max={10}
          step={0.1}
          digits={2}
          onCommit={(value) => value !== null && put('hold', { holdStops: value })}
        />
      </WithPin>
      <SelectField
        label="Under what"
        field="hold-under"
        value={setup.holdUnder}
        options={HOLD_REFERENCES.map((value) => ({ value, text: HOLD_WORDS[value].choice }))}
        onChoose={(holdUnder) => put('hold reference', { holdUnder })}
      />
      <NumberField
        label="Unlit face under the key"
        field="unlit-under"
        value={setup.unlitUnderStops}
        unit="stops"
        min={0}
        max={8}
        step={0.1}
        digits={2}
        onCommit={(value) => value !== null && put('unlit face', { unlitUnderStops: value })}
      />
      <WithPin
        pin={
          <Pin
            what="clock"
            name="the clock time"
            on={setup.clockPinned}
            onTurn={(on) => put('clock pin', { clockPinned: on })}
          />
        }
      >
        <TextField
          label="Starts at"
          field="start-clock"
          value={setup.startClock}
          maxLength={5}
          faultOf={(text) =>
            isClock(text) ? null : `found ‘${text}’, expected a clock time such as 19:30`
          }
          onCommit={(startClock) => {
            put('start', { startClock });
            look({ minuteMs: null });
          }}
        />
      </WithPin>
      <NumberField
        label="Lasts"
        field="duration"
        value={setup.durationMin}
        unit="min"
        min={5}
        max={720}
        step={5}
        onCommit={(value) => value !== null && put('duration', { durationMin: Math.round(value) })}
      />
      <Switch
        label="A panel keeps the sun off the subject"
        field="shaded"
        on={setup.shaded}
        onTurn={(shaded) => put('shade', { shaded })}
      />
    </Group>
  );
}
