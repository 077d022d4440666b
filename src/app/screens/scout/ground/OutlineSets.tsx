import type { ReactNode } from 'react';

import { removeOutlineSet } from '../../../../core/plan/obstacle-edits.ts';
import type { OutlineSet } from '../../../../core/plan/obstacle-schema.ts';
import { inOrder } from '../../../../core/plan/order-key.ts';
import { formatDate } from '../../../../core/units/civil-time.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { endTool, lookAtGround, useGroundView } from '../../../state/ground-view.ts';
import { say } from '../../../state/view.ts';
import { counted } from './obstacle-words.ts';

type OutlineSetsProps = { readonly sets: Readonly<Record<string, OutlineSet>> };

/** The imports of outlines, each whole; one outline of them can be taken over for editing. */
export function OutlineSets({ sets }: OutlineSetsProps): ReactNode {
  const edit = useEditShoot();
  const takingOver = useGroundView(({ tool }) => tool === 'take-over');
  const all = inOrder(sets);
  if (all.length === 0) return null;
  return (
    <section aria-label="Outlines taken in">
      <h3>Outlines taken in</h3>
      <ul className="outline-sets">
        {all.map(([id, set]) => (
          <li key={id} data-outline-set={id}>
            <p>
              <strong>{set.name}</strong>
              <span className="quiet" data-figure="outline-set">
                {shownText(set)}; from {set.origin}, {formatDate(set.dated, 'en-GB')}
              </span>
            </p>
            <button
              type="button"
              data-remove-set={id}
              onClick={() => {
                edit(`remove ${set.name}`, removeOutlineSet(id));
                say(`Removed ${set.name}. Undo brings it back`);
              }}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <button
        type="button"
        data-take-over
        aria-pressed={takingOver}
        onClick={() =>
          takingOver
            ? endTool()
            : lookAtGround({ tool: 'take-over', corners: [], obstacleId: null })
        }
      >
        Take one over for editing
      </button>
      {takingOver ? (
        <p>Click an outline on the map; with the map in focus, Enter takes the one at the cross.</p>
      ) : null}
    </section>
  );
}

/** '39 of 40 outlines' */
function shownText({ outlineCount, hidden }: OutlineSet): string {
  const out = Object.keys(hidden).length;
  const all = counted(outlineCount, 'outline', 'outlines');
  return out === 0 ? all : `${(outlineCount - out).toLocaleString('en-GB')} of ${all}`;
}
