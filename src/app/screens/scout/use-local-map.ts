import { useEffect, useState } from 'react';

import type { LocalMap } from '../../map/local/local-map.ts';
import { useSavedSetting } from '../../state/saved-setting.ts';
import { useServices } from '../../state/services.ts';

/** Map archives are kept among this device's files under names that begin so. */
export const MAP_FILE_PREFIX = 'map/';

export type ShownLocalMap = {
  /** Of the archive that is shown; '' for none, null until that is known. */
  readonly name: string | null;
  /** Null while it is opened, and where it cannot be. */
  readonly map: LocalMap | null;
  readonly problem: string | null;
  readonly show: (name: string) => void;
};

type Opened = Pick<ShownLocalMap, 'map' | 'problem'> & { readonly name: string };

/** The map archive that this device shows; it stays chosen until another one is. */
export function useLocalMap(): ShownLocalMap {
  const { repository } = useServices();
  const [name, show] = useSavedSetting<string>('local-map', '');
  const [opened, setOpened] = useState<Opened | null>(null);
  useEffect(
    function openShown() {
      if (name === null || name === '') return undefined;
      let wanted = true;
      const open = async (): Promise<Opened> => {
        const kept = await repository.file(`${MAP_FILE_PREFIX}${name}`);
        if (!kept.ok) return { name, map: null, problem: kept.problem.sentence };
        if (kept.value === null)
          return { name, map: null, problem: `${name} is not on this device any more` };
        const { openLocalMap } = await import('../../map/local/local-map.ts');
        const read = await openLocalMap(name, kept.value);
        return read.ok
          ? { name, map: read.value, problem: null }
          : { name, map: null, problem: `${name}: ${read.problem}` };
      };
      void open()
        .catch(() => ({ name, map: null, problem: `${name} could not be opened` }))
        .then((found) => {
          if (wanted) setOpened(found);
        });
      return function forget() {
        wanted = false;
      };
    },
    [repository, name],
  );
  const current = opened !== null && opened.name === name ? opened : null;
  return { name, map: current?.map ?? null, problem: current?.problem ?? null, show };
}
