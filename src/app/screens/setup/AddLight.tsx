import type { ReactNode } from 'react';

import { addLight } from '../../../core/plan/edits.ts';
import { newLight, nextRole } from '../../../core/plan/new-light.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import { useEditShoot, useKit } from '../../state/documents.tsx';
import { useServices } from '../../state/services.ts';
import { ROLE_NAMES } from '../../ui/recipe-text.ts';

type AddLightProps = { readonly setupId: string; readonly setup: Setup };

export function AddLight({ setupId, setup }: AddLightProps): ReactNode {
  const kit = useKit();
  const edit = useEditShoot();
  const { newId } = useServices();
  const role = nextRole(setup.lights);
  const light = newLight(kit, setup.lights, role);
  const name = ROLE_NAMES[role].toLowerCase();
  return (
    <div className="add-light">
      {light === null ? (
        <p>The kit holds no head or no modifier: add both under Kit, then a light here.</p>
      ) : (
        <button
          type="button"
          data-add-light
          onClick={() => edit(`${name} added`, addLight(setupId, newId(), light))}
        >
          Add a light: {name}
        </button>
      )}
    </div>
  );
}
