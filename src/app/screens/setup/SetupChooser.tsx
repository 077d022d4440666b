import { useState, type ReactNode } from 'react';

import { addSetup, editSetup, removeSetup } from '../../../core/plan/edits.ts';
import { copyOf, newSetup } from '../../../core/plan/new-setup.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import { useEditShoot, useKit, useShoot } from '../../state/documents.tsx';
import { useServices } from '../../state/services.ts';
import { look, say } from '../../state/view.ts';
import { SelectField } from '../../ui/SelectField.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** Which setup is looked at, and adding, naming, copying and deleting them. */
export function SetupChooser({ setupId }: { readonly setupId: string | null }): ReactNode {
  const shoot = useShoot();
  const setups = inOrder(shoot.setups);
  const options = setups.map(([id, setup]) => ({
    value: id,
    text: `${setup.startClock} ${setup.name}`,
  }));
  return (
    <div className="setup-chooser">
      {setupId === null ? null : (
        <SelectField
          label="Setup"
          field="setup"
          value={setupId}
          options={options}
          onChoose={lookAt}
        />
      )}
      <details className="manage" open={setupId === null}>
        <summary>Setups: add, name, copy, delete</summary>
        <div className="fields">
          {setupId === null ? null : <OwnName key={setupId} setupId={setupId} />}
          <AddAtSpot setupId={setupId} />
        </div>
      </details>
    </div>
  );
}

const lookAt = (setupId: string): void => look({ setupId, minuteMs: null });

function OwnName({ setupId }: { readonly setupId: string }): ReactNode {
  const shoot = useShoot();
  const edit = useEditShoot();
  const { newId } = useServices();
  const setup = shoot.setups[setupId];
  if (setup === undefined) return null;
  const add = (label: string, made: Setup): void => {
    const id = newId();
    edit(label, addSetup(id, made));
    lookAt(id);
  };
  return (
    <>
      <TextField
        label="Name"
        field="setup-name"
        value={setup.name}
        maxLength={120}
        faultOf={(text) => (text.trim() === '' ? 'found nothing, expected a name' : null)}
        onCommit={(name) => edit('setup name', editSetup(setupId, { name: name.trim() }))}
      />
      <button
        type="button"
        data-copy-setup
        onClick={() => {
          const copy = copyOf(shoot, setupId);
          if (copy !== null) add(`copy of ${setup.name}`, copy);
        }}
      >
        Copy this setup
      </button>
      <button
        type="button"
        data-delete-setup
        onClick={() => {
          edit(`${setup.name} deleted`, removeSetup(setupId));
          look({ setupId: null, minuteMs: null });
          say(`${setup.name} deleted; undo brings it back`);
        }}
      >
        Delete this setup
      </button>
    </>
  );
}

function AddAtSpot({ setupId }: { readonly setupId: string | null }): ReactNode {
  const shoot = useShoot();
  const kit = useKit();
  const edit = useEditShoot();
  const { newId } = useServices();
  const spots = inOrder(shoot.spots);
  const first = (setupId === null ? undefined : shoot.setups[setupId]?.spotId) ?? spots[0]?.[0];
  const [chosen, setChosen] = useState<string | null>(null);
  const spotId = chosen !== null && shoot.spots[chosen] !== undefined ? chosen : first;
  if (spotId === undefined) return <p>Add a spot under Scout first.</p>;
  return (
    <>
      <SelectField
        label="Spot of a new setup"
        field="new-setup-spot"
        value={spotId}
        options={spots.map(([value, { name }]) => ({ value, text: name }))}
        onChoose={setChosen}
      />
      <button
        type="button"
        data-add-setup
        onClick={() => {
          const made = newSetup(shoot, kit, {
            name: `New setup, ${shoot.spots[spotId]?.name ?? 'no spot'}`,
            spotId,
            startClock: '19:00',
            lightId: newId(),
          });
          if (!made.ok) {
            say(made.problem);
            return;
          }
          const id = newId();
          edit('new setup', addSetup(id, made.value));
          lookAt(id);
        }}
      >
        Add a setup there
      </button>
    </>
  );
}
