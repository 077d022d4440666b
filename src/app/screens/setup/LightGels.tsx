import type { ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import { useKit } from '../../state/documents.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import type { LightProps } from './light-props.ts';
import { useLightEdit } from './use-setup-edit.ts';

const NO_GEL = '';

/** Up to two gels, one on the other: their stops and their mired add. */
export function LightGels({ setupId, lightId, light }: LightProps): ReactNode {
  const kit = useKit();
  const put = useLightEdit(setupId, lightId);
  const options = [
    { value: NO_GEL, text: 'none' },
    ...inOrder(kit.gels).map(([value, { name }]) => ({ value, text: name })),
  ];
  const idOf = (chosen: string): string | null => (chosen === NO_GEL ? null : chosen);
  return (
    <>
      <SelectField
        label="Gel"
        field={`gel-${lightId}`}
        value={light.gelId ?? NO_GEL}
        options={options}
        onChoose={(gelId) => put('gel', { gelId: idOf(gelId) })}
      />
      <SelectField
        label="Second gel on it"
        field={`second-gel-${lightId}`}
        value={light.secondGelId ?? NO_GEL}
        options={options}
        onChoose={(gelId) => put('second gel', { secondGelId: idOf(gelId) })}
      />
    </>
  );
}
