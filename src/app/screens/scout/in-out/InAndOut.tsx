import './in-out.css';
import { useState, type ReactNode } from 'react';

import { Dialog } from '../../../ui/Dialog.tsx';
import { BringIn } from './BringIn.tsx';
import { TakeOut } from './TakeOut.tsx';

type InAndOutProps = {
  /** Dropped on the map or pasted; null where the user opened this. */
  readonly given: { readonly files: readonly File[]; readonly text: string } | null;
  readonly spotId: string | null;
  readonly onClose: () => void;
};

/** Spots and photos into the shoot, and spots out of it. */
export function InAndOut({ given, spotId, onClose }: InAndOutProps): ReactNode {
  const [way, setWay] = useState<'in' | 'out'>('in');
  return (
    <Dialog title="Spots in and out" onClose={onClose}>
      <div className="in-out-ways" role="group" aria-label="Which way">
        <button type="button" aria-pressed={way === 'in'} onClick={() => setWay('in')}>
          Bring spots and photos in
        </button>
        <button
          type="button"
          aria-pressed={way === 'out'}
          data-take-out
          onClick={() => setWay('out')}
        >
          Take spots out
        </button>
      </div>
      {way === 'in' ? <BringIn given={given} spotId={spotId} onDone={onClose} /> : <TakeOut />}
    </Dialog>
  );
}
