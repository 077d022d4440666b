import type { ReactNode } from 'react';

import { together } from '../../../../core/plan/edits.ts';
import { inOrder, inWrittenOrder, orderKeyAtEnd } from '../../../../core/plan/order-key.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { editSiteEntry, putSiteEntry, removeSiteEntry } from '../../../../core/plan/site-edits.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { useServices } from '../../../state/services.ts';
import { Switch } from '../../../ui/Switch.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import { SCOUTING_CHECKS } from './scouting-checks.data.ts';

type CheckListProps = { readonly spotId: string; readonly spot: Spot };

/** What to look at on the scouting visit, ticked off there. */
export function CheckList({ spotId, spot }: CheckListProps): ReactNode {
  const edit = useEditShoot();
  const { newId } = useServices();
  const label = `scouting list of ${spot.name}`;
  const checks = inOrder(spot.checklist);
  const fillIn = (): void => {
    const entries = inWrittenOrder(
      Object.fromEntries(SCOUTING_CHECKS.map((text) => [newId(), { text, done: false }])),
    );
    edit(
      label,
      together(
        ...Object.entries(entries).map(([id, check]) =>
          putSiteEntry(spotId, 'checklist', id, check),
        ),
      ),
    );
  };
  return (
    <>
      {checks.length === 0 ? (
        <button type="button" data-fill-checklist onClick={fillIn}>
          Begin with the usual {SCOUTING_CHECKS.length} points
        </button>
      ) : null}
      <ul className="site-list">
        {checks.map(([id, check]) => (
          <li key={id} data-check={id}>
            <Switch
              label="Done"
              field="check-done"
              on={check.done}
              onTurn={(done) => edit(label, editSiteEntry(spotId, 'checklist', id, { done }))}
            />
            <TextField
              label="Look at"
              field="check-text"
              maxLength={120}
              value={check.text}
              faultOf={(text) => (text.trim() === '' ? 'expected a text, found nothing' : null)}
              onCommit={(text) => edit(label, editSiteEntry(spotId, 'checklist', id, { text }))}
            />
            <button
              type="button"
              aria-label={`Remove: ${check.text}`}
              data-remove-check={id}
              onClick={() => edit(label, removeSiteEntry(spotId, 'checklist', id))}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <button
        type="button"
        data-add-check
        onClick={() =>
          edit(
            label,
            putSiteEntry(spotId, 'checklist', newId(), {
              order: orderKeyAtEnd(spot.checklist),
              text: 'Look at the sky in the frame once more',
              done: false,
            }),
          )
        }
      >
        Add a point
      </button>
    </>
  );
}
