import { memo, type ReactNode } from 'react';

import { editSpotFraming } from '../../../core/plan/edits.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import type { ShootFraming } from '../../../core/plan/spot-schema.ts';
import { projectedFraming } from '../../../core/plan/picture-geometry.ts';
import { horizontalFieldDeg, verticalFieldDeg } from '../../../core/sky/framing.ts';
import { wrapDeg360 } from '../../../core/units/angle.ts';
import { useEditShoot } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { cameraText } from './camera-text.ts';
import { Declination } from './Declination.tsx';
import { SensorFields } from './SensorFields.tsx';

type FramingFieldsProps = { readonly spotId: string; readonly spot: Spot };

/** Where the camera faces, large, and every number of it. */
export const FramingFields = memo(function FramingFields({
  spotId,
  spot,
}: FramingFieldsProps): ReactNode {
  const edit = useEditShoot();
  const { framing } = spot;
  const put = (what: string, fields: Partial<ShootFraming>): void =>
    edit(`${what} of ${spot.name}`, editSpotFraming(spotId, fields));
  const projected = projectedFraming(framing);
  return (
    <section aria-labelledby="camera-faces">
      <h2 id="camera-faces" className="quiet">
        Camera faces
      </h2>
      <p className="figure" data-figure="camera-faces">
        {cameraText(framing)}
      </p>
      <p className="quiet" data-figure="field-of-view">
        sees {horizontalFieldDeg(projected).toFixed(0)}° across and{' '}
        {verticalFieldDeg(projected).toFixed(0)}° up and down
      </p>
      <Declination spot={spot} bearingDeg={framing.bearingDeg} />
      <div className="fields">
        <NumberField
          label="Bearing"
          unit="°"
          field="bearing"
          value={framing.bearingDeg}
          min={-360}
          max={360}
          step={1}
          digits={1}
          onCommit={(value) => value !== null && put('bearing', { bearingDeg: wrapDeg360(value) })}
        />
        <NumberField
          label="Tilt"
          unit="°"
          field="tilt"
          value={framing.tiltDeg}
          min={-89}
          max={89}
          step={1}
          digits={1}
          onCommit={(value) => value !== null && put('tilt', { tiltDeg: value })}
        />
        <NumberField
          label="Focal length"
          unit="mm"
          field="focal-length"
          value={framing.focalLengthMm}
          min={4}
          max={2000}
          step={1}
          digits={1}
          onCommit={(value) => value !== null && put('focal length', { focalLengthMm: value })}
        />
        <SelectField
          label="Orientation"
          field="orientation"
          value={framing.orientation}
          options={[
            { value: 'landscape', text: 'landscape' },
            { value: 'portrait', text: 'portrait' },
          ]}
          onChoose={(orientation) => put('orientation', { orientation })}
        />
        <NumberField
          label="Camera distance"
          unit="m"
          field="camera-distance"
          value={framing.cameraDistanceM}
          min={0.3}
          max={500}
          step={0.1}
          digits={2}
          onCommit={(value) => value !== null && put('camera distance', { cameraDistanceM: value })}
        />
        <NumberField
          label="Camera height"
          unit="m"
          field="camera-height"
          value={framing.cameraHeightM}
          min={0.05}
          max={50}
          step={0.05}
          digits={2}
          onCommit={(value) => value !== null && put('camera height', { cameraHeightM: value })}
        />
        <SensorFields framing={framing} onPut={(size) => put('sensor', size)} />
      </div>
    </section>
  );
});
