import { useCallback, useEffect, useState } from 'react';

import { readLocalMapHeader, openLocalMap } from '../../map/local/local-map.ts';
import { useServices, type Services } from '../../state/services.ts';
import { MAP_FILE_PREFIX } from './use-local-map.ts';

type Header = Awaited<ReturnType<typeof readLocalMapHeader>>;

/** A map archive kept on this device, and what it says of itself. */
export type MapFile = {
  readonly name: string;
  readonly sizeBytes: number;
  readonly header: Header;
};

export type MapFiles = {
  /** Null until they are listed. */
  readonly files: readonly MapFile[] | null;
  /** Keeps the file when it is a map archive; the answer is what is wrong, or null. */
  readonly keep: (file: File) => Promise<string | null>;
  readonly remove: (name: string) => Promise<string | null>;
};

export function useMapFiles(): MapFiles {
  const { repository } = useServices();
  const [files, setFiles] = useState<readonly MapFile[] | null>(null);

  const list = useCallback(async (): Promise<void> => {
    setFiles(await listMapFiles(repository));
  }, [repository]);

  useEffect(
    function listOnce() {
      let wanted = true;
      void listMapFiles(repository).then((listed) => {
        if (wanted) setFiles(listed);
      });
      return function forget() {
        wanted = false;
      };
    },
    [repository],
  );

  const keep = useCallback(
    async (file: File): Promise<string | null> => {
      const read = await openLocalMap(file.name, file);
      if (!read.ok) return `${file.name}: ${read.problem}`;
      // Without this a browser short of room may throw kept files away.
      await navigator.storage?.persist?.().catch(() => false);
      const kept = await repository.keepFile(`${MAP_FILE_PREFIX}${file.name}`, file);
      if (!kept.ok) return `${file.name} was not kept. ${kept.problem.sentence}`;
      await list();
      return null;
    },
    [repository, list],
  );

  const remove = useCallback(
    async (name: string): Promise<string | null> => {
      const removed = await repository.removeFile(`${MAP_FILE_PREFIX}${name}`);
      if (!removed.ok) return removed.problem.sentence;
      await list();
      return null;
    },
    [repository, list],
  );

  return { files, keep, remove };
}

const listMapFiles = async (repository: Services['repository']): Promise<readonly MapFile[]> => {
  const listed = await repository.listFiles();
  const ours = listed.ok ? listed.value.filter(({ name }) => name.startsWith(MAP_FILE_PREFIX)) : [];
  return Promise.all(
    ours.map(async ({ name, sizeBytes }): Promise<MapFile> => {
      const kept = await repository.file(name);
      const header: Header =
        kept.ok && kept.value !== null
          ? await readLocalMapHeader(kept.value)
          : { ok: false, problem: 'the file could not be read' };
      return { name: name.slice(MAP_FILE_PREFIX.length), sizeBytes, header };
    }),
  );
};
