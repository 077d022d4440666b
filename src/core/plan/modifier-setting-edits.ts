import type { Edit } from './edits.ts';
import type { Kit, Modifier } from './kit.ts';

type Setting = Modifier['settings'][string];

/** A row of a modifier's own table, added or put in the place of one of its id. */
export const putModifierSetting =
  (modifierId: string, settingId: string, setting: Setting): Edit<Kit> =>
  (kit) => {
    const modifier = kit.modifiers[modifierId];
    if (modifier !== undefined) modifier.settings[settingId] = { ...setting };
  };

export const editModifierSetting =
  (modifierId: string, settingId: string, fields: Partial<Setting>): Edit<Kit> =>
  (kit) => {
    const setting = kit.modifiers[modifierId]?.settings[settingId];
    if (setting !== undefined) Object.assign(setting, fields);
  };

/** A light that names it then counts with the modifier as its figures stand. */
export const removeModifierSetting =
  (modifierId: string, settingId: string): Edit<Kit> =>
  (kit) => {
    const modifier = kit.modifiers[modifierId];
    if (modifier !== undefined) delete modifier.settings[settingId];
  };
