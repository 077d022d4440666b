import type { ReactNode } from 'react';

import { formatShutter } from '../../../core/exposure/shutter-scale.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { useKit } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import type { AskedProps } from './asked-props.ts';
import { Group } from './Group.tsx';
import { useSetupEdit } from './use-setup-edit.ts';

/** Camera, lens and the aperture that is wished for. */
export function CameraFields({ setupId, setup, view }: AskedProps): ReactNode {
  const kit = useKit();
  const put = useSetupEdit(setupId);
  return (
    <Group title="Camera" id="camera">
      <SelectField
        label="Camera"
        field="camera"
        value={setup.cameraId}
        options={inOrder(kit.cameras).map(([value, { name }]) => ({ value, text: name }))}
        onChoose={(cameraId) => put('camera', { cameraId })}
      />
      <SelectField
        label="Lens"
        field="lens"
        value={setup.lensId}
        options={inOrder(kit.lenses).map(([value, { name }]) => ({ value, text: name }))}
        onChoose={(lensId) => put('lens', { lensId })}
      />
      <NumberField
        label="Aperture wished for, f/"
        field="wish-aperture"
        value={setup.wishFNumber}
        min={0.7}
        max={64}
        step={0.1}
        digits={1}
        onCommit={(value) => value !== null && put('wished aperture', { wishFNumber: value })}
      />
      {view === null ? null : (
        <p className="quiet wide">
          Syncs to <span data-figure="sync">{formatShutter(view.input.camera.syncShutterS)}</span>,
          slowest allowed{' '}
          <span data-figure="slowest-allowed">
            {formatShutter(view.input.camera.slowestShutterS)}
          </span>
        </p>
      )}
    </Group>
  );
}
