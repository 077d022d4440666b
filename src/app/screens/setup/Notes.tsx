import type { ReactNode } from 'react';

import type { SetupView } from '../../../core/plan/setup-view.ts';
import { useKit } from '../../state/documents.tsx';
import { CAUTIONS, notesOf } from './notes.ts';

export function Notes({ view }: { readonly view: SetupView | null }): ReactNode {
  const kit = useKit();
  const notes = view === null ? [] : notesOf(view, kit);
  return (
    <section className="setup-notes">
      {notes.length === 0 ? null : (
        <>
          <h2>To know here</h2>
          <ul>
            {notes.map(({ id, text }) => (
              <li key={id} data-note={id}>
                {text}
              </li>
            ))}
          </ul>
        </>
      )}
      <h2>Take care</h2>
      <ul className="cautions">
        {CAUTIONS.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
