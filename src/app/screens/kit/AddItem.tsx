import { useState, type ReactNode } from 'react';

import { putKitItem } from '../../../core/plan/edits.ts';
import {
  GENERIC_BATTERIES,
  GENERIC_CAMERAS,
  GENERIC_FILTERS,
  GENERIC_HEADS,
  GENERIC_KIT_GELS,
  GENERIC_KIT_MODIFIERS,
  GENERIC_LENSES,
  GENERIC_STANDS,
} from '../../../core/plan/generic-kit.data.ts';
import type { Kit, KitShelf } from '../../../core/plan/kit.ts';
import { orderKeyAtEnd } from '../../../core/plan/order-key.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { useServices } from '../../state/services.ts';
import { say } from '../../state/view.ts';
import { SelectField } from '../../ui/SelectField.tsx';
import { SHELVES } from './shelves.ts';

type Entries<Shelf extends KitShelf> = readonly Omit<Kit[Shelf][string], 'order'>[];

const GENERIC: { readonly [Shelf in KitShelf]: Entries<Shelf> } = {
  cameras: GENERIC_CAMERAS,
  lenses: GENERIC_LENSES,
  heads: GENERIC_HEADS,
  modifiers: GENERIC_KIT_MODIFIERS,
  filters: GENERIC_FILTERS,
  gels: GENERIC_KIT_GELS,
  stands: GENERIC_STANDS,
  batteries: GENERIC_BATTERIES,
};

/** A generic entry to begin from; its figures are then the user's to change. */
export function AddItem({ shelf }: { readonly shelf: KitShelf }): ReactNode {
  const kit = useKit();
  const edit = useEditKit();
  const { newId } = useServices();
  const entries: readonly { readonly name: string }[] = GENERIC[shelf];
  const [chosen, setChosen] = useState('0');

  const add = (): void => {
    const entry = GENERIC[shelf][Number(chosen)];
    if (entry === undefined) return;
    const item = { ...entry, order: orderKeyAtEnd(kit[shelf]) };
    edit(`add ${entry.name}`, putKitItem(shelf, newId(), item));
    say(`Added ${entry.name}. Its figures are generic until you change them.`);
  };

  return (
    <div className="add-item">
      <SelectField
        label={`Add a ${SHELVES[shelf].one} from the generic ones`}
        field="generic"
        value={chosen}
        options={entries.map(({ name }, place) => ({ value: String(place), text: name }))}
        onChoose={setChosen}
      />
      <button type="button" className="first" data-add-item onClick={add}>
        Add
      </button>
    </div>
  );
}
