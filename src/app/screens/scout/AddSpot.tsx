import { useDeferredValue, useEffect, useId, useMemo, useState, type ReactNode } from 'react';

import { parseCoordinates } from '../../../core/place/coordinates-text.ts';
import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { useAtlas } from '../../state/atlas.ts';
import { coordinatesFault } from './coordinates-fault.ts';

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
      <PlaceSearch onPlace={onPlace} />
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

const MOST_PLACES = 8;

const PlaceSearch = ({ onPlace }: { readonly onPlace: AddSpotProps['onPlace'] }): ReactNode => {
  const id = useId();
  const [text, setText] = useState('');
  const searched = useDeferredValue(text.trim());
  const names = usePlaceNames(text.trim() !== '');
  const found = useMemo(
    () => (names === null || names === 'unreadable' ? [] : names.search(searched, MOST_PLACES)),
    [names, searched],
  );
  return (
    <div className="field">
      <label htmlFor={id}>Or a town or village, by how its name begins</label>
      <input
        id={id}
        type="search"
        autoComplete="off"
        data-field="place-search"
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      {text.trim() === '' ? null : names === 'unreadable' ? (
        <span className="fault" role="alert">
          the place names are not on this device and could not be fetched
        </span>
      ) : names === null ? (
        <span className="quiet">reading the place names…</span>
      ) : found.length === 0 ? (
        <span className="quiet" role="status">
          no place of 1000 people or more begins with “{text.trim()}”
        </span>
      ) : (
        <ul className="found-places">
          {found.map((place) => (
            <li key={`${place.name} ${place.point.latitudeDeg} ${place.point.longitudeDeg}`}>
              <button
                type="button"
                data-found-place={place.name}
                onClick={() => onPlace(place.point, place.name)}
              >
                {place.name}, {place.countryCode}{' '}
                <span className="quiet">{place.population.toLocaleString('en-GB')} people</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <span className="quiet">GeoNames, CC BY 4.0; searched on this device.</span>
    </div>
  );
};

type Names = Awaited<ReturnType<ReturnType<typeof useAtlas>['places']>>;

/** The names, read when first wanted; null until they are there. */
function usePlaceNames(wanted: boolean): Names | 'unreadable' | null {
  const atlas = useAtlas();
  const [names, setNames] = useState<Names | 'unreadable' | null>(null);
  useEffect(
    function readNames() {
      if (!wanted) return undefined;
      let current = true;
      void atlas
        .places()
        .catch(() => 'unreadable' as const)
        .then((read) => {
          if (current) setNames(read);
        });
      return () => {
        current = false;
      };
    },
    [atlas, wanted],
  );
  return names;
}
