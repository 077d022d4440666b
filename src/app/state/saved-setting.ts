import { useEffect, useState } from 'react';

import type { SettingValue } from '../../storage/shoot-repository.ts';
import { useServices } from './services.ts';

/** A setting of this device: null until it is read, then what was saved or the fallback. */
export function useSavedSetting<Value extends SettingValue & {}>(
  name: string,
  fallback: Value,
): readonly [value: Value | null, save: (value: Value) => void] {
  const { repository } = useServices();
  const [value, setValue] = useState<Value | null>(null);
  useEffect(
    function readSaved() {
      let current = true;
      void repository.setting(name).then((read) => {
        if (!current) return;
        const saved = read.ok && typeof read.value === typeof fallback ? read.value : fallback;
        setValue(saved as Value);
      });
      return () => {
        current = false;
      };
    },
    [repository, name, fallback],
  );
  const save = (next: Value): void => {
    setValue(next);
    void repository.saveSetting(name, next);
  };
  return [value, save];
}
