import type { ReactNode } from 'react';

import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { useKit } from '../../state/documents.tsx';
import { CAUTIONS, notesOf } from './notes.ts';
import { SpreadFixes } from './SpreadFixes.tsx';

type KnowHereProps = { readonly asked: SetupCaseInput; readonly view: SetupView };

/** What has to be known at this minute. */
export function KnowHere({ asked, view }: KnowHereProps): ReactNode {
  const kit = useKit();
  const notes = notesOf(view, kit);
  return (
    <section className="know-here">
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
      <SpreadFixes asked={asked} view={view} />
    </section>
  );
}

export const TakeCare = (): ReactNode => (
  <section className="take-care">
    <h2>Take care</h2>
    <ul>
      {CAUTIONS.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  </section>
);
