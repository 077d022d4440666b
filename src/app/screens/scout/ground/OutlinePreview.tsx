import type { ReactNode } from 'react';

import { addOutlineSet } from '../../../../core/plan/obstacle-edits.ts';
import { orderKeyAtEnd } from '../../../../core/plan/order-key.ts';
import { useEditShoot, useShoot } from '../../../state/documents.tsx';
import type { OutlinesRead } from '../../../state/outline-files.ts';
import { useServices } from '../../../state/services.ts';
import { say } from '../../../state/view.ts';
import { counted, freeName } from './obstacle-words.ts';

export type LookedOutlines = {
  readonly name: string;
  readonly outlines: OutlinesRead;
};

type OutlinePreviewProps = {
  readonly looked: LookedOutlines;
  /** Civil date of today at the spot. */
  readonly dated: string;
  readonly onDone: () => void;
};

/** What taking outlines in would do; nothing is changed before the button. */
export function OutlinePreview({ looked, dated, onDone }: OutlinePreviewProps): ReactNode {
  const { name, outlines } = looked;
  const shoot = useShoot();
  const edit = useEditShoot();
  const { newId } = useServices();
  const count = counted(outlines.outlines.length, 'outline', 'outlines');
  const take = (): void => {
    const taken = Object.values(shoot.outlineSets).map((set) => set.name);
    edit(
      `take in ${count} of ${name}`,
      addOutlineSet(newId(), {
        order: orderKeyAtEnd(shoot.outlineSets),
        name: freeName(name, taken),
        origin: outlines.origin,
        dated,
        outlineCount: outlines.outlines.length,
        geoJson: outlines.text,
        hidden: {},
      }),
    );
    say(`Taken in: ${count} of ${name}. Undo takes them out again`);
    onDone();
  };
  return (
    <div className="outline-preview" data-outline-preview>
      <p>
        <strong>{name}</strong> holds <span data-figure="outlines-found">{count}</span>
        {kindsText(outlines)}.
      </p>
      {outlines.notes.map((note) => (
        <p key={note} data-note="outlines-note">
          {note}
        </p>
      ))}
      {outlines.skipped.map(({ count: left, why }) => (
        <p key={why} data-note="outlines-skipped">
          Left out: {left.toLocaleString('en-GB')}, {why}
        </p>
      ))}
      <p className="quiet">Every spot’s skyline and sun times follow what is taken in.</p>
      <p className="buttons">
        <button type="button" className="first" data-take-outlines onClick={take}>
          Take in {count}
        </button>
        <button type="button" data-leave-outlines onClick={onDone}>
          Leave them
        </button>
      </p>
    </div>
  );
}

const WORDS = { building: 'buildings', wall: 'walls', trees: 'trees' } as const;

/** ': 38 of buildings, 2 of walls' */
function kindsText({ outlines }: OutlinesRead): string {
  const kinds = Object.entries(WORDS).flatMap(([kind, word]) => {
    const count = outlines.filter(({ obstacle }) => obstacle.kind === kind).length;
    return count === 0 ? [] : [`${count.toLocaleString('en-GB')} of ${word}`];
  });
  return kinds.length === 0 ? '' : `: ${kinds.join(', ')}`;
}
