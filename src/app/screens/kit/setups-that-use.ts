import type { KitShelf } from '../../../core/plan/kit.ts';
import { kitReferences } from '../../../core/plan/references.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import type { Shoot } from '../../../core/plan/shoot.ts';

/** Names of the setups of a shoot that need an item. */
export const setupsThatUse = (shoot: Shoot, shelf: KitShelf, id: string): readonly string[] =>
  inOrder(shoot.setups)
    .filter(([setupId, setup]) =>
      kitReferences({ ...shoot, setups: { [setupId]: setup } }).some(
        (reference) => reference.shelf === shelf && reference.id === id,
      ),
    )
    .map(([, { name }]) => name);
