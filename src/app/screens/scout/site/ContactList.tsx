import type { ReactNode } from 'react';

import { inOrder, orderKeyAtEnd } from '../../../../core/plan/order-key.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { editSiteEntry, putSiteEntry, removeSiteEntry } from '../../../../core/plan/site-edits.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { useServices } from '../../../state/services.ts';
import { TextField } from '../../../ui/TextField.tsx';

type ContactListProps = { readonly spotId: string; readonly spot: Spot };

/** Whom to call, by role; what is noted here is listed before a shoot leaves the device. */
export function ContactList({ spotId, spot }: ContactListProps): ReactNode {
  const edit = useEditShoot();
  const { newId } = useServices();
  const label = `contacts of ${spot.name}`;
  return (
    <>
      <p className="quiet">
        Roles rather than names: harbour master, gatekeeper, neighbour. Before a shoot leaves this
        device, each of them is listed and can be left out.
      </p>
      <ul className="site-list">
        {inOrder(spot.contacts).map(([id, contact]) => (
          <li key={id} data-contact={id}>
            <TextField
              label="Role"
              field="contact-role"
              maxLength={120}
              value={contact.role}
              faultOf={(text) => (text.trim() === '' ? 'expected a role, found nothing' : null)}
              onCommit={(role) => edit(label, editSiteEntry(spotId, 'contacts', id, { role }))}
            />
            <TextField
              label="How to reach, when"
              field="contact-note"
              value={contact.note}
              onCommit={(note) => edit(label, editSiteEntry(spotId, 'contacts', id, { note }))}
            />
            <button
              type="button"
              aria-label={`Remove ${contact.role}`}
              data-remove-contact={id}
              onClick={() => edit(label, removeSiteEntry(spotId, 'contacts', id))}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <button
        type="button"
        data-add-contact
        onClick={() =>
          edit(
            label,
            putSiteEntry(spotId, 'contacts', newId(), {
              order: orderKeyAtEnd(spot.contacts),
              role: 'Land manager',
              note: '',
            }),
          )
        }
      >
        Add a contact
      </button>
    </>
  );
}
