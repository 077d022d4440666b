import { useId, useState, type ReactNode } from 'react';

import { useShoot } from '../../state/documents.tsx';
import { boundsText, sizeText, spotsInText } from './map-file-text.ts';
import type { ShownLocalMap } from './use-local-map.ts';
import { useMapFiles, type MapFile } from './use-map-files.ts';

/** Map archives on this device: added from a file, shown, taken away. */
export function LocalMapFiles({ shown }: { readonly shown: ShownLocalMap }): ReactNode {
  const { files, keep, remove } = useMapFiles();
  const [saying, setSaying] = useState<string | null>(null);
  const [keeping, setKeeping] = useState(false);
  const id = useId();

  const add = async (file: File): Promise<void> => {
    setKeeping(true);
    setSaying(null);
    const problem = await keep(file).catch(() => `${file.name} could not be read`);
    setKeeping(false);
    setSaying(problem);
    if (problem === null) shown.show(file.name);
  };
  const takeAway = async (name: string): Promise<void> => {
    if (shown.name === name) shown.show('');
    setSaying(await remove(name));
  };

  return (
    <section aria-label="Maps on this device">
      <h3>Maps on this device</h3>
      {files?.length === 0 ? (
        <p className="quiet">None. A map kept here needs no network, and tells nobody.</p>
      ) : null}
      <ul className="map-files">
        {(files ?? []).map((file) => (
          <MapFileRow
            key={file.name}
            file={file}
            isShown={shown.name === file.name}
            onShow={shown.show}
            onRemove={() => void takeAway(file.name)}
          />
        ))}
      </ul>
      <div className="field">
        <label htmlFor={id}>Add a map archive (.pmtiles) from a file</label>
        <input
          id={id}
          type="file"
          accept=".pmtiles"
          data-field="local-map-file"
          disabled={keeping}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            event.currentTarget.value = '';
            if (file !== undefined) void add(file);
          }}
        />
      </div>
      <p role="status" data-note="local-map">
        {keeping ? 'Keeping the map on this device…' : (saying ?? shown.problem)}
      </p>
    </section>
  );
}

type MapFileRowProps = {
  readonly file: MapFile;
  readonly isShown: boolean;
  readonly onShow: (name: string) => void;
  readonly onRemove: () => void;
};

function MapFileRow({ file, isShown, onShow, onRemove }: MapFileRowProps): ReactNode {
  const { spots } = useShoot();
  const { name, sizeBytes, header } = file;
  const within = header.ok ? spotsInText(header.value.bounds, Object.values(spots)) : null;
  return (
    <li data-map-file={name}>
      <label className="switch">
        <input
          type="checkbox"
          data-field="local-map-shown"
          checked={isShown}
          disabled={!header.ok}
          onChange={(event) => onShow(event.currentTarget.checked ? name : '')}
        />
        {name}
      </label>
      <span className="quiet">
        {sizeText(sizeBytes)}
        {header.ok
          ? `, ${boundsText(header.value.bounds)}, zoom ${header.value.minZoom} to ${header.value.maxZoom}`
          : `: ${header.problem}`}
        {within === null ? '' : `; ${within}`}
      </span>
      <button type="button" className="bare" data-remove-map onClick={onRemove}>
        Remove {name} from this device
      </button>
    </li>
  );
}
