import type { ReactNode } from 'react';

import { editKitItem } from '../../../core/plan/edits.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';

export function GelForm({ id }: { readonly id: string }): ReactNode {
  const gel = useKit().gels[id];
  const edit = useEditKit();
  if (gel === undefined) return null;
  return (
    <div className="fields">
      <NumberField
        label="Costs the flash"
        field="gel-stops"
        unit="stops"
        min={0}
        max={8}
        step={0.1}
        value={gel.stops}
        onCommit={(stops) =>
          stops !== null && edit(`change ${gel.name}`, editKitItem('gels', id, { stops }))
        }
      />
      <NumberField
        label="Shift, warmer positive"
        field="gel-mired"
        unit="mired"
        min={-400}
        max={400}
        step={1}
        value={gel.miredShift}
        onCommit={(miredShift) =>
          miredShift !== null && edit(`change ${gel.name}`, editKitItem('gels', id, { miredShift }))
        }
      />
      <NumberField
        label="Green more, magenta negative"
        field="gel-green"
        unit="stops"
        min={-3}
        max={3}
        step={0.1}
        value={gel.greenStops}
        onCommit={(greenStops) =>
          greenStops !== null && edit(`change ${gel.name}`, editKitItem('gels', id, { greenStops }))
        }
      />
    </div>
  );
}
