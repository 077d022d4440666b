import { useDeferredValue, useEffect, useId, useMemo, useState, type ReactNode } from 'react';

import { useAtlas, type Atlas } from '../../state/atlas.ts';

type Names = Awaited<ReturnType<Atlas['places']>>;
type Place = ReturnType<Names['search']>[number];

type PlaceSearchProps = {
  readonly label: string;
  readonly field: string;
  /** What a place found is for; where left out, it is only shown. */
  readonly onPick?: (place: Place) => void;
  readonly onShow: (place: Place) => void;
};

const MOST_PLACES = 8;

/** Towns and villages by the beginning of their names, searched on this device. */
export function PlaceSearch({ label, field, onPick, onShow }: PlaceSearchProps): ReactNode {
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
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="search"
        autoComplete="off"
        data-field={field}
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
                onClick={() => (onPick ?? onShow)(place)}
              >
                {place.name}, {place.countryCode}{' '}
                <span className="quiet">{place.population.toLocaleString('en-GB')} people</span>
              </button>
              {onPick === undefined ? null : (
                <button
                  type="button"
                  className="bare"
                  data-show-place={place.name}
                  aria-label={`Show ${place.name} on the map`}
                  onClick={() => onShow(place)}
                >
                  show
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
      <span className="quiet">GeoNames, CC BY 4.0; searched on this device.</span>
    </div>
  );
}

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
