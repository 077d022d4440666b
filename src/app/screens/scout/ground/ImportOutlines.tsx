import { useState, type ReactNode } from 'react';

import { outlinesFromFile } from '../../../state/outline-files.ts';
import { OutlinePreview, type LookedOutlines } from './OutlinePreview.tsx';

type Looked =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'reading'; readonly name: string }
  | { readonly kind: 'refused'; readonly name: string; readonly why: string }
  | { readonly kind: 'there'; readonly looked: LookedOutlines };

/** Reads outlines from a file and shows what taking them in would do. */
export function ImportOutlines({ dated }: { readonly dated: string }): ReactNode {
  const [state, setState] = useState<Looked>({ kind: 'nothing' });

  const look = async (file: File): Promise<void> => {
    const { name } = file;
    setState({ kind: 'reading', name });
    const read = await outlinesFromFile(file);
    setState(
      read.ok
        ? { kind: 'there', looked: { name, outlines: read.value } }
        : { kind: 'refused', name, why: read.problem },
    );
  };

  return (
    <section aria-label="Outlines from a file">
      <h3>Outlines from a file</h3>
      <label className="file-choice">
        <span className="quiet">
          GeoJSON with buildings, walls or trees; nothing changes before you say so
        </span>
        <input
          type="file"
          accept=".geojson,.json,application/geo+json,application/json"
          data-field="import-outlines"
          onChange={(event) => {
            const input = event.currentTarget;
            const file = input.files?.[0];
            if (file === undefined) return;
            // The same file can be chosen again after it was changed.
            void look(file).finally(() => {
              input.value = '';
            });
          }}
        />
      </label>
      {state.kind === 'reading' ? <p role="status">Reading {state.name}…</p> : null}
      {state.kind === 'refused' ? (
        <p className="fault" role="alert" data-note="outlines-refused">
          {state.name} was not taken in. {state.why}
        </p>
      ) : null}
      {state.kind === 'there' ? (
        <OutlinePreview
          looked={state.looked}
          dated={dated}
          onDone={() => setState({ kind: 'nothing' })}
        />
      ) : null}
    </section>
  );
}
