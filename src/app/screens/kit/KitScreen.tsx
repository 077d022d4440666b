import { Suspense, useState, type ReactNode } from 'react';

import type { KitShelf } from '../../../core/plan/kit.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { useKit } from '../../state/documents.tsx';
import { lazyPart } from '../../state/lazy-part.ts';
import { AddItem } from './AddItem.tsx';
import { BatteryForm } from './BatteryForm.tsx';
import { CameraForm } from './CameraForm.tsx';
import { FilterForm } from './FilterForm.tsx';
import { GelForm } from './GelForm.tsx';
import { HeadForm } from './HeadForm.tsx';
import { ItemFrame } from './ItemFrame.tsx';
import { LensForm } from './LensForm.tsx';
import { ModifierForm } from './ModifierForm.tsx';
import { SHELVES } from './shelves.ts';
import { StandForm } from './StandForm.tsx';
import './kit.css';

const PackingList = lazyPart(async () => (await import('./PackingList.tsx')).PackingList);

/** What is owned: shelves on the left, the items of one on the right, each open for editing. */
export function KitScreen(): ReactNode {
  const [shown, setShown] = useState<KitShelf | 'packing'>('heads');
  const kit = useKit();
  return (
    <div className="kit" data-first-figures="drawn">
      <nav aria-label="Shelves" className="shelves">
        {(Object.keys(SHELVES) as KitShelf[]).map((name) => (
          <button
            key={name}
            type="button"
            data-shelf={name}
            aria-pressed={name === shown}
            onClick={() => setShown(name)}
          >
            {SHELVES[name].title} <span className="quiet">{Object.keys(kit[name]).length}</span>
          </button>
        ))}
        <button
          type="button"
          data-shelf="packing"
          aria-pressed={shown === 'packing'}
          onClick={() => setShown('packing')}
        >
          Packing list
        </button>
      </nav>
      {shown === 'packing' ? (
        <Suspense fallback={<p data-loading>Opening…</p>}>
          <PackingList />
        </Suspense>
      ) : (
        <Shelf shelf={shown} />
      )}
    </div>
  );
}

function Shelf({ shelf }: { readonly shelf: KitShelf }): ReactNode {
  const kit = useKit();
  const items = inOrder(kit[shelf] as Readonly<Record<string, { order: string; name: string }>>);
  const words = SHELVES[shelf];
  return (
    <div className="shelf">
      <header>
        <h1>{words.title}</h1>
        <p className="quiet">{words.note}</p>
      </header>
      <ul className="items">
        {items.map(([id, { name }], place) => (
          <ItemFrame key={id} shelf={shelf} id={id} name={name} open={place === 0}>
            {formOf(shelf, id)}
          </ItemFrame>
        ))}
      </ul>
      {items.length === 0 ? <p>Nothing on this shelf yet.</p> : null}
      <AddItem key={shelf} shelf={shelf} />
    </div>
  );
}

function formOf(shelf: KitShelf, id: string): ReactNode {
  switch (shelf) {
    case 'cameras':
      return <CameraForm id={id} />;
    case 'lenses':
      return <LensForm id={id} />;
    case 'heads':
      return <HeadForm id={id} />;
    case 'modifiers':
      return <ModifierForm id={id} />;
    case 'filters':
      return <FilterForm id={id} />;
    case 'gels':
      return <GelForm id={id} />;
    case 'stands':
      return <StandForm id={id} />;
    case 'batteries':
      return <BatteryForm id={id} />;
  }
}
