import type { ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import { useKit } from '../../state/documents.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { Switch } from '../../ui/Switch.tsx';
import { WithPin } from './Group.tsx';
import type { LightProps } from './light-props.ts';
import { Pin } from './Pin.tsx';
import { useLightEdit } from './use-setup-edit.ts';

const AS_IT_STANDS = '';
const PARTS = ['diffuser', 'baffle', 'grid'] as const;

/** The modifier, how it is set, and those of its parts that can be taken off. */
export function LightModifier({ setupId, lightId, light }: LightProps): ReactNode {
  const kit = useKit();
  const put = useLightEdit(setupId, lightId);
  const modifier = kit.modifiers[light.modifierId];
  return (
    <>
      <WithPin
        pin={
          <Pin
            what={`modifier-${lightId}`}
            name="the modifier"
            on={light.modifierPinned}
            onTurn={(on) => put('modifier pin', { modifierPinned: on })}
          />
        }
      >
        <SelectField
          label="Modifier"
          field={`modifier-${lightId}`}
          value={light.modifierId}
          options={inOrder(kit.modifiers).map(([value, { name }]) => ({ value, text: name }))}
          onChoose={(modifierId) =>
            // As it is carried: the diffuser on where it has one, the rest off.
            put('modifier', {
              modifierId,
              diffuser: (kit.modifiers[modifierId]?.diffuserStops ?? null) !== null,
              baffle: false,
              grid: false,
            })
          }
        />
      </WithPin>
      {modifier === undefined || Object.keys(modifier.settings).length === 0 ? null : (
        <SelectField
          label="Set to"
          field={`setting-${lightId}`}
          value={
            light.modifierSettingId !== null && light.modifierSettingId in modifier.settings
              ? light.modifierSettingId
              : AS_IT_STANDS
          }
          options={[
            { value: AS_IT_STANDS, text: 'as its figures stand' },
            ...inOrder(modifier.settings).map(([value, { name, beamDeg }]) => ({
              value,
              text: `${name}, ${Math.round(beamDeg)}°`,
            })),
          ]}
          onChoose={(id) =>
            put('modifier setting', { modifierSettingId: id === AS_IT_STANDS ? null : id })
          }
        />
      )}
      {PARTS.map((part) =>
        (modifier?.[`${part}Stops`] ?? null) === null ? null : (
          <Switch
            key={part}
            label={`${part} on`}
            field={`${part}-${lightId}`}
            on={light[part]}
            onTurn={(on) => put(part, { [part]: on })}
          />
        ),
      )}
    </>
  );
}
