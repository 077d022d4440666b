import type { ReactNode } from 'react';

import { MOTIONS, POSES, type Motion, type Pose } from '../../../core/plan/setup-schema.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { Switch } from '../../ui/Switch.tsx';
import type { AskedProps } from './asked-props.ts';
import { Group } from './Group.tsx';
import { useSetupEdit } from './use-setup-edit.ts';

const MOTION_TEXTS: Readonly<Record<Motion, string>> = {
  still: 'stand still',
  posing: 'pose',
  gesturing: 'gesture',
  walking: 'walk',
  running: 'run',
  jumping: 'jump',
};

const POSE_TEXTS: Readonly<Record<Pose, string>> = {
  standing: 'stand',
  sitting: 'sit',
  lying: 'lie',
};

const NUMBERS = [
  { key: 'people', id: 'people', label: 'People', unit: '', min: 1, max: 20, step: 1 },
  { key: 'spacingM', id: 'spacing', label: 'From face to face', unit: 'm', min: 0.2, max: 5, step: 0.05 },
  { key: 'rows', id: 'rows', label: 'Rows', unit: '', min: 1, max: 5, step: 1 },
  { key: 'rowSpacingM', id: 'row-spacing', label: 'From row to row', unit: 'm', min: 0.2, max: 5, step: 0.1 },
  { key: 'faceHeightM', id: 'face-height', label: 'Face height', unit: 'm', min: 0.3, max: 4, step: 0.05 },
  { key: 'spreadLimitStops', id: 'spread-limit', label: 'Faces may differ by', unit: 'stops', min: 0.05, max: 3, step: 0.05 },
] as const; // prettier-ignore

/** Who is there, how they stand and how they move. */
export function PeopleFields({ setupId, setup }: AskedProps): ReactNode {
  const put = useSetupEdit(setupId);
  return (
    <Group title="People" id="people">
      {NUMBERS.map(({ key, id, label, unit, min, max, step }) => (
        <NumberField
          key={key}
          label={label}
          field={id}
          value={setup[key]}
          {...(unit === '' ? {} : { unit })}
          min={min}
          max={max}
          step={step}
          digits={2}
          onCommit={(value) =>
            value !== null &&
            put(label.toLowerCase(), { [key]: unit === '' ? Math.round(value) : value })
          }
        />
      ))}
      <SelectField
        label="Posture"
        field="pose"
        value={setup.pose}
        options={POSES.map((value) => ({ value, text: POSE_TEXTS[value] }))}
        onChoose={(pose) => put('pose', { pose })}
      />
      <SelectField
        label="They"
        field="motion"
        value={setup.motion}
        options={MOTIONS.map((value) => ({ value, text: MOTION_TEXTS[value] }))}
        onChoose={(motion) => put('movement', { motion })}
      />
      <Switch
        label="Camera on a tripod"
        field="tripod"
        on={setup.tripod}
        onTurn={(tripod) => put('tripod', { tripod })}
      />
    </Group>
  );
}
