import type { ReactNode } from 'react';

import { editKitItem, removeKitItem } from '../../../core/plan/edits.ts';
import type { KitShelf } from '../../../core/plan/kit.ts';
import { useEditKit, useKit, useShoot } from '../../state/documents.tsx';
import { say } from '../../state/view.ts';
import { TextField } from '../../ui/TextField.tsx';
import { itemLine } from './item-line.ts';
import { setupsThatUse } from './setups-that-use.ts';

type ItemFrameProps = {
  readonly shelf: KitShelf;
  readonly id: string;
  readonly name: string;
  readonly open: boolean;
  readonly children: ReactNode;
};

/** One item: folded to its name, or open with its fields, its users and the way out. */
export function ItemFrame({ shelf, id, name, open, children }: ItemFrameProps): ReactNode {
  const edit = useEditKit();
  const kit = useKit();
  const users = setupsThatUse(useShoot(), shelf, id);
  return (
    <li>
      <details data-item={id} open={open}>
        <summary>
          {name}
          <span className="quiet item-line" data-figure={`line-${id}`}>
            {itemLine(kit, shelf, id)}
          </span>
        </summary>
        <div className="item">
          <TextField
            label="Name"
            field={`${shelf}-name`}
            maxLength={120}
            value={name}
            faultOf={(text) =>
              text.trim() === '' ? 'found nothing, expected a name of 1 to 120 characters' : null
            }
            onCommit={(text) => edit(`name of ${name}`, editKitItem(shelf, id, { name: text }))}
          />
          {children}
          <div className="item-foot">
            <span className="quiet">
              {users.length === 0 ? 'In no setup of this shoot.' : `Used by ${users.join(', ')}.`}
            </span>
            <button
              type="button"
              data-remove-item={id}
              onClick={() => {
                edit(`remove ${name}`, removeKitItem(shelf, id));
                say(
                  `Removed ${name}. Undo brings it back.${users.length > 0 ? ` ${users.join(', ')} cannot be solved without it.` : ''}`,
                );
              }}
            >
              Remove
            </button>
          </div>
        </div>
      </details>
    </li>
  );
}
