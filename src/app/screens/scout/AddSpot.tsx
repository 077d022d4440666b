import { useId, useState, type ReactNode } from 'react';

import { parseCoordinates } from '../../../core/place/coordinates-text.ts';
import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { look } from '../../state/view.ts';
import { coordinatesFault } from './coordinates-fault.ts';
import { PlaceSearch } from './PlaceSearch.tsx';

type AddSpotProps = {
  readonly onPlace: (point: GeoPoint, name: string | null) => void;
  readonly onCancel: () => void;
};

/** Three ways to say where a new spot is. */
export function AddSpot({ onPlace, onCancel }: AddSpotProps): ReactNode {
  return (
    <section className="add-spot" aria-label="Add a spot">
      <h2>Where is the new spot?</h2>
      <p>Click it on the map; with the map in focus, Enter puts it at the cross.</p>
      <CoordinatesEntry onPlace={(point) => onPlace(point, null)} />
      <PlaceSearch
        label="Or a town or village, by how its name begins"
        field="place-search"
        onPick={({ point, name }) => onPlace(point, name)}
        onShow={({ point, name }) => look({ shownPlace: { point, name } })}
      />
      <button type="button" data-cancel-add onClick={onCancel}>
        Do not add
      </button>
    </section>
  );
}

const CoordinatesEntry = ({
  onPlace,
}: {
  readonly onPlace: (point: GeoPoint) => void;
}): ReactNode => {
  const id = useId();
  const [text, setText] = useState('');
  const [asked, setAsked] = useState(false);
  const fault = asked ? coordinatesFault(text) : null;
  return (
    <form
      className="field"
      onSubmit={(event) => {
        event.preventDefault();
        const read = parseCoordinates(text);
        setAsked(true);
        if (read.ok) onPlace(read.value);
      }}
    >
      <label htmlFor={id}>Or its coordinates, any usual notation</label>
      <span className="entry">
        <input
          id={id}
          autoComplete="off"
          data-field="new-coordinates"
          placeholder="45°39′01″ N 13°45′26″ E"
          value={text}
          aria-invalid={fault !== null}
          aria-describedby={fault === null ? undefined : `${id}-fault`}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <button data-place-coordinates>Put it there</button>
      </span>
      {fault === null ? null : (
        <span className="fault" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
    </form>
  );
};
