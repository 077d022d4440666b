import type { ReactNode } from 'react';

import type { Modifier } from '../../../core/plan/kit.ts';
import {
  editModifierSetting,
  putModifierSetting,
  removeModifierSetting,
} from '../../../core/plan/modifier-setting-edits.ts';
import { inOrder, orderKeyAtEnd } from '../../../core/plan/order-key.ts';
import { useEditKit } from '../../state/documents.tsx';
import { useServices } from '../../state/services.ts';
import { signedTenths } from '../../ui/figure-text.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { acrossText, BEAM_SHOWN_AT_M } from './beam-text.ts';

type ModifierSettingsProps = { readonly modifierId: string; readonly modifier: Modifier };

const USUAL_BEAM_DEG = 50;

/** The user's own table of a focusing modifier: each setting with its beam and its stops. */
export function ModifierSettings({ modifierId, modifier }: ModifierSettingsProps): ReactNode {
  const edit = useEditKit();
  const { newId } = useServices();
  const settings = inOrder(modifier.settings);
  const add = (): void => {
    const setting = {
      order: orderKeyAtEnd(modifier.settings),
      name: `Setting ${settings.length + 1}`,
      beamDeg: modifier.beamDeg ?? USUAL_BEAM_DEG,
      stops: 0,
    };
    edit(`add a setting of ${modifier.name}`, putModifierSetting(modifierId, newId(), setting));
  };
  return (
    <fieldset className="measure">
      <legend>Its settings</legend>
      <p className="quiet">
        For a modifier that focuses: one row for each ring or mark on it. Meter each at the same
        distance and power; stops count against the figures above, negative where it gains.
      </p>
      {settings.map(([settingId, setting]) => (
        <SettingRow
          key={settingId}
          modifierId={modifierId}
          modifier={modifier}
          settingId={settingId}
          setting={setting}
        />
      ))}
      <div>
        <button type="button" data-add-setting={`${modifierId}-${settings.length}`} onClick={add}>
          Add a setting
        </button>
      </div>
    </fieldset>
  );
}

type SettingRowProps = ModifierSettingsProps & {
  readonly settingId: string;
  readonly setting: Modifier['settings'][string];
};

function SettingRow({ modifierId, modifier, settingId, setting }: SettingRowProps): ReactNode {
  const edit = useEditKit();
  const label = `setting ${setting.name} of ${modifier.name}`;
  const put = (fields: Partial<typeof setting>): void =>
    edit(label, editModifierSetting(modifierId, settingId, fields));
  return (
    <div className="setting-row" data-setting={settingId}>
      <TextField
        label="Name"
        field="setting-name"
        maxLength={120}
        value={setting.name}
        faultOf={(text) =>
          text.trim() === '' ? 'found nothing, expected a name of 1 to 120 characters' : null
        }
        onCommit={(name) => put({ name })}
      />
      <NumberField
        label="Beam"
        field="setting-beam"
        unit="°"
        min={2}
        max={180}
        step={5}
        value={setting.beamDeg}
        onCommit={(beamDeg) => beamDeg !== null && put({ beamDeg })}
      />
      <NumberField
        label="Costs"
        field="setting-stops"
        unit="stops"
        min={-6}
        max={6}
        step={0.1}
        value={setting.stops}
        onCommit={(stops) => stops !== null && put({ stops })}
      />
      <p className="quiet" data-figure="setting-line">
        {signedTenths(-modifier.lossStops - setting.stops)} stops in all,{' '}
        {acrossText(setting.beamDeg)} wide at {BEAM_SHOWN_AT_M} m
      </p>
      <button
        type="button"
        data-remove-setting={settingId}
        onClick={() => edit(`remove ${label}`, removeModifierSetting(modifierId, settingId))}
      >
        Remove
      </button>
    </div>
  );
}
