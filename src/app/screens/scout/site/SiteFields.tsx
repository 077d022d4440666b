import type { ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { FOOT_TRAFFIC, PERMISSIONS, SHELTERS } from '../../../../core/plan/spot-schema.ts';
import { isCivilDate } from '../../../../core/units/civil-time.ts';
import { NumberField } from '../../../ui/NumberField.tsx';
import { SelectField } from '../../../ui/SelectField.tsx';
import { Switch } from '../../../ui/Switch.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import { FOOT_TRAFFIC_WORDS, HAZARD_WORDS, PERMISSION_WORDS, SHELTER_WORDS } from './site-words.ts';
import { surfaceOf, SURFACE_SOURCES, SURFACES } from './surfaces.ts';

const NOTES = [
  { key: 'groundNote', label: 'Ground and walls', field: 'ground-note' },
  {
    key: 'accessNote',
    label: 'Access: gates, steps, how a trolley gets there',
    field: 'access-note',
  },
  { key: 'parkingNote', label: 'Parking', field: 'parking-note' },
  { key: 'toiletsNote', label: 'Toilets', field: 'toilets-note' },
  { key: 'footTrafficNote', label: 'Foot traffic, when', field: 'foot-traffic-note' },
  { key: 'shelterNote', label: 'Shelter, where', field: 'shelter-note' },
  { key: 'windNote', label: 'Wind', field: 'wind-note' },
  { key: 'powerNote', label: 'Power', field: 'power-note' },
  { key: 'hazardsNote', label: 'Hazards, in words', field: 'hazards-note' },
] as const satisfies readonly { key: keyof Spot; label: string; field: string }[];

const PERMISSION_NOTES = [
  { key: 'permissionNote', label: 'By whom', field: 'permission-note' },
  { key: 'permissionNumber', label: 'Number', field: 'permission-number' },
  { key: 'permissionConditions', label: 'Conditions', field: 'permission-conditions' },
] as const;

const PERMISSION_DATES = [
  { key: 'permissionFrom', label: 'From', field: 'permission-from' },
  { key: 'permissionUntil', label: 'Until', field: 'permission-until' },
] as const;

type SiteFieldsProps = {
  readonly spot: Spot;
  readonly put: (what: string, fields: Partial<Spot>) => void;
};

const dateFault = (text: string): string | null =>
  text === '' || isCivilDate(text) ? null : `expected a date such as 2027-05-14, found “${text}”`;

/** Every field of the site notes that is not a list. */
export function SiteFields({ spot, put }: SiteFieldsProps): ReactNode {
  const surface = surfaceOf(spot.groundReflectance);
  return (
    <>
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
          label="Foot traffic"
          field="foot-traffic"
          value={spot.footTraffic}
          options={FOOT_TRAFFIC.map((value) => ({ value, text: FOOT_TRAFFIC_WORDS[value] }))}
          onChoose={(footTraffic) => put('foot traffic', { footTraffic })}
        />
        <SelectField
          label="Shelter"
          field="shelter"
          value={spot.shelter}
          options={SHELTERS.map((value) => ({ value, text: SHELTER_WORDS[value] }))}
          onChoose={(shelter) => put('shelter', { shelter })}
        />
        <SelectField
          label="Permission"
          field="permission"
          value={spot.permission}
          options={PERMISSIONS.map((value) => ({ value, text: PERMISSION_WORDS[value] }))}
          onChoose={(permission) => put('permission', { permission })}
        />
        {PERMISSION_DATES.map(({ key, label, field }) => (
          <TextField
            key={key}
            label={`Permission ${label.toLowerCase()}`}
            field={field}
            maxLength={10}
            faultOf={dateFault}
            value={spot[key]}
            onCommit={(date) => put('permission', { [key]: date })}
          />
        ))}
      </div>
      {PERMISSION_NOTES.map(({ key, label, field }) => (
        <TextField
          key={key}
          label={`Permission: ${label.toLowerCase()}`}
          field={field}
          value={spot[key]}
          onCommit={(text) => put('permission', { [key]: text })}
        />
      ))}
      <p className="quiet">{SURFACE_SOURCES}</p>
      <fieldset className="hazards">
        <legend>Hazards here</legend>
        {Object.entries(HAZARD_WORDS).map(([hazard, { name }]) => (
          <Switch
            key={hazard}
            label={name}
            field={`hazard-${hazard}`}
            on={spot.hazards[hazard as keyof Spot['hazards']]}
            onTurn={(on) => put('hazards', { hazards: { ...spot.hazards, [hazard]: on } })}
          />
        ))}
      </fieldset>
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
    </>
  );
}
