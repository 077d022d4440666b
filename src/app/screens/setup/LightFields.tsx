import type { ReactNode } from 'react';

import { removeLight } from '../../../core/plan/edits.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import { ROLES } from '../../../core/plan/setup-schema.ts';
import { useEditShoot } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { Group } from './Group.tsx';
import { LightHead } from './LightHead.tsx';
import { LightModifier } from './LightModifier.tsx';
import { LightBounce } from './LightBounce.tsx';
import { LightGels } from './LightGels.tsx';
import type { KnownLightProps } from './light-props.ts';
import { LightReport } from './LightReport.tsx';
import { LightStandFields } from './LightStandFields.tsx';
import { ROLE_NAMES } from '../../ui/recipe-text.ts';
import { useLightEdit } from './use-setup-edit.ts';

type LightFieldsProps = KnownLightProps & { readonly setup: Setup };

/** One light of the setup. */
export function LightFields(props: LightFieldsProps): ReactNode {
  const { setupId, lightId, light, setup, source } = props;
  const edit = useEditShoot();
  const put = useLightEdit(setupId, lightId);
  return (
    <Group
      title={ROLE_NAMES[light.role]}
      id={`light-${lightId}`}
      aside={
        <button
          type="button"
          data-remove-light={lightId}
          onClick={() =>
            edit(`${ROLE_NAMES[light.role].toLowerCase()} removed`, removeLight(setupId, lightId))
          }
        >
          Take it out
        </button>
      }
    >
      <SelectField
        label="Role"
        field={`role-${lightId}`}
        value={light.role}
        options={ROLES.map((value) => ({ value, text: ROLE_NAMES[value].toLowerCase() }))}
        onChoose={(role) => put('role', { role })}
      />
      <NumberField
        label="Against the camera setting"
        field={`stops-${lightId}`}
        value={light.stops}
        unit="stops"
        min={-8}
        max={4}
        step={0.1}
        digits={2}
        onCommit={(value) => value !== null && put('ratio', { stops: value })}
      />
      <LightHead {...props} />
      <LightModifier {...props} />
      <LightGels {...props} />
      <LightStandFields {...props} />
      <LightBounce {...props} />
      {source === null ? null : <LightReport setup={setup} source={source} />}
    </Group>
  );
}
