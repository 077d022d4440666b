import { memo, type ReactNode } from 'react';

import { editSpot } from '../../../core/plan/edits.ts';
import { type Spot } from '../../../core/plan/shoot.ts';
import { PERMISSIONS } from '../../../core/plan/spot-schema.ts';
import { useEditShoot } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { groundLines, PERMISSION_WORDS } from './ground-lines.ts';
import { surfaceOf, SURFACE_SOURCES, SURFACES } from './surfaces.ts';

type GroundNotesProps = { readonly spotId: string; readonly spot: Spot };

const NOTES = [
  { key: 'groundNote', label: 'Ground and walls', field: 'ground-note' },
  { key: 'parkingNote', label: 'Parking', field: 'parking-note' },
  { key: 'permissionNote', label: 'Permission, from whom', field: 'permission-note' },
  { key: 'footTrafficNote', label: 'Foot traffic', field: 'foot-traffic-note' },
  { key: 'windNote', label: 'Wind', field: 'wind-note' },
  { key: 'powerNote', label: 'Power', field: 'power-note' },
  { key: 'hazardsNote', label: 'Hazards', field: 'hazards-note' },
] as const satisfies readonly { key: keyof Spot; label: string; field: string }[];

/** What the ground reflects, how to get there, and what to look out for. */
export const GroundNotes = memo(function GroundNotes({
  spotId,
  spot,
}: GroundNotesProps): ReactNode {
  const edit = useEditShoot();
  const put = (what: string, fields: Partial<Spot>): void =>
    edit(`${what} of ${spot.name}`, editSpot(spotId, fields));
  const surface = surfaceOf(spot.groundReflectance);
  return (
    <section aria-labelledby="on-the-ground">
      <h2 id="on-the-ground">On the ground</h2>
      {spot.hazardsNote === '' ? null : (
        <p className="caution" data-figure="hazards">
          {spot.hazardsNote}
        </p>
      )}
      <dl className="ground-lines" data-figure="ground-lines">
        {groundLines(spot).map(([name, text]) => (
          <div key={name}>
            <dt className="quiet">{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <p className="quiet">
        Notes only: local rules and the land manager decide what is allowed here, and what is noted
        says nothing about safety.
      </p>
      <details>
        <summary data-open="ground">Change ground and access</summary>
        <div className="fields">
          <NumberField
            label="Ground reflects"
            field="ground-reflectance"
            unit="of 1"
            value={spot.groundReflectance}
            min={0}
            max={0.95}
            step={0.01}
            digits={2}
            onCommit={(value) => value !== null && put('ground', { groundReflectance: value })}
          />
          <SelectField
            label="Surface"
            field="surface"
            value={surface}
            options={[
              ...SURFACES.map(({ name, reflectance }) => ({
                value: name as string,
                text: `${name}, ${reflectance}`,
              })),
              ...(surface === 'own' ? [{ value: 'own', text: 'own value' }] : []),
            ]}
            onChoose={(chosen) => {
              const found = SURFACES.find(({ name }) => name === chosen);
              if (found !== undefined) put('ground', { groundReflectance: found.reflectance });
            }}
          />
          <NumberField
            label="Walk-in"
            field="walk-in"
            unit="min"
            value={spot.walkInMin}
            min={0}
            max={600}
            step={1}
            digits={0}
            onCommit={(value) => value !== null && put('walk-in', { walkInMin: value })}
          />
          <SelectField
            label="Permission"
            field="permission"
            value={spot.permission}
            options={PERMISSIONS.map((value) => ({ value, text: PERMISSION_WORDS[value] }))}
            onChoose={(permission) => put('permission', { permission })}
          />
        </div>
        <p className="quiet">{SURFACE_SOURCES}</p>
        {NOTES.map(({ key, label, field }) => (
          <TextField
            key={key}
            label={label}
            field={field}
            lines={2}
            value={spot[key]}
            onCommit={(text) => put(label.toLowerCase(), { [key]: text })}
          />
        ))}
      </details>
    </section>
  );
});
