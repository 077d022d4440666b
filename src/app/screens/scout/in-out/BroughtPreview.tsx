import { useState, type ReactNode } from 'react';

import { inOrder } from '../../../../core/plan/order-key.ts';
import { formatCoordinates } from '../../../../core/place/format-coordinates.ts';
import { useShoot } from '../../../state/documents.tsx';
import type { BroughtIn, Taken } from '../../../state/spot-files.ts';
import { SelectField } from '../../../ui/SelectField.tsx';
import { counted, deed, takenAtFirst } from './brought-words.ts';

type BroughtPreviewProps = {
  readonly brought: BroughtIn;
  readonly spotId: string | null;
  readonly onTake: (taken: Taken) => void;
  readonly onBack: () => void;
};

/** What would happen, place by place, each of which can be left out. */
export function BroughtPreview(props: BroughtPreviewProps): ReactNode {
  const { brought, spotId, onTake, onBack } = props;
  const { spots } = useShoot();
  const [ticked, setTicked] = useState(() => brought.places.map(takenAtFirst));
  const [looseTo, setLooseTo] = useState(spotId ?? '');
  const [busy, setBusy] = useState(false);
  const places = brought.places.filter((_, at) => ticked[at] === true);
  const isNothing = places.length === 0 && (brought.loosePhotos.length === 0 || looseTo === '');
  return (
    <>
      <ul className="brought" data-figure="brought">
        {brought.places.map((place, at) => (
          // The list never changes while it is shown.
          <li key={at} data-brought={place.action}>
            <label className="switch">
              <input
                type="checkbox"
                checked={ticked[at] === true}
                onChange={(event) => {
                  const on = event.currentTarget.checked;
                  setTicked(ticked.map((was, index) => (index === at ? on : was)));
                }}
              />
              <span>
                <strong>{place.waypoint.name ?? 'A place without a name'}</strong>{' '}
                {formatCoordinates({ ...place.waypoint, elevationM: 0 })}:{' '}
                {deed(place, place.spotId === null ? null : (spots[place.spotId]?.name ?? null))}.{' '}
                <span className="quiet">{place.because}</span>
              </span>
            </label>
          </li>
        ))}
      </ul>
      {brought.loosePhotos.length === 0 ? null : (
        <SelectField
          label={`${counted(brought.loosePhotos.length, 'photo')} without a position: ${brought.loosePhotos
            .slice(0, 4)
            .map(({ name }) => name)
            .join(', ')}`}
          field="loose-photos-to"
          value={looseTo}
          options={[
            { value: '', text: 'leave them out' },
            ...inOrder(spots).map(([id, spot]) => ({ value: id, text: `to ${spot.name}` })),
          ]}
          onChoose={setLooseTo}
        />
      )}
      <Findings brought={brought} />
      <div className="in-out-ways">
        <button
          type="button"
          className="first"
          data-take-in
          disabled={isNothing || busy}
          onClick={() => {
            setBusy(true);
            onTake({ places, loosePhotosTo: looseTo === '' ? null : looseTo });
          }}
        >
          Bring in{' '}
          {places.length > 0
            ? counted(places.length, 'place')
            : counted(brought.loosePhotos.length, 'photo')}
        </button>
        <button type="button" data-bring-in-back onClick={onBack}>
          Other files
        </button>
      </div>
    </>
  );
}

const MOST_LISTED = 20;

function Findings({ brought }: { readonly brought: BroughtIn }): ReactNode {
  const { refused, skipped, notes } = brought;
  const lines = [...refused, ...notes, ...skipped.map(({ what, why }) => `${what}: ${why}`)];
  if (lines.length === 0) return null;
  const more = lines.length - MOST_LISTED;
  return (
    <ul className="quiet" data-note="brought-notes">
      {lines.slice(0, MOST_LISTED).map((line, at) => (
        <li key={at}>{line}</li>
      ))}
      {more > 0 ? <li>and {more} more</li> : null}
    </ul>
  );
}
