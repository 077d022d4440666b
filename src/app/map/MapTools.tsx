import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { Suspense, useState } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { look, useView } from '../state/view.ts';
import type { DeclinationAt } from './CompassLine.tsx';
import { LazyMarkedPlace, LazyMeasure, LazyOwnPlace } from './lazy-tools.ts';
import { MapButtons } from './MapButtons.tsx';
import { MapSign } from './MapSign.tsx';
import type { MapSpot } from './map-spot.ts';

const endShowing = (): void => look({ shownPlace: null });

type MapToolsProps = {
  readonly map: LeafletMap;
  readonly spots: readonly MapSpot[];
  /** Another tool picks points on the map just now. */
  readonly busy: boolean;
  readonly declinationAt: DeclinationAt | undefined;
  readonly onAddAt: (point: GeoPoint) => void;
};

/** The buttons of the map and what they open. */
export function MapTools({ map, spots, busy, declinationAt, onAddAt }: MapToolsProps): ReactNode {
  const [measuring, setMeasuring] = useState(false);
  const [locating, setLocating] = useState(false);
  const shown = useView((view) => view.shownPlace);
  const endMeasuring = (): void => setMeasuring(false);
  const endLocating = (): void => setLocating(false);
  if (measuring && busy) endMeasuring();
  return (
    <>
      <MapButtons map={map} spots={spots}>
        <button
          type="button"
          aria-label="Measure distance and bearing"
          title="Measure distance and bearing"
          aria-pressed={measuring}
          disabled={busy}
          data-measure
          onClick={() => setMeasuring(!measuring)}
        >
          <MapSign path="M3 15 15 3M1.5 13.5l3 3M13.5 1.5l3 3" />
        </button>
        <button
          type="button"
          aria-label="Own position"
          title="Own position"
          aria-pressed={locating}
          data-own-position
          onClick={() => setLocating(!locating)}
        >
          <MapSign path="M9 1v4M9 13v4M1 9h4M13 9h4M9 5l4 4-4 4-4-4z" />
        </button>
      </MapButtons>
      <div className="map-panels">
        <Suspense>
          {measuring && !busy ? (
            <LazyMeasure
              map={map}
              spots={spots}
              declinationAt={declinationAt}
              onEnd={endMeasuring}
            />
          ) : null}
          {locating ? (
            <LazyOwnPlace
              map={map}
              onEnd={endLocating}
              onAdd={(point) => {
                endLocating();
                onAddAt(point);
              }}
            />
          ) : null}
          {shown === null ? null : (
            <LazyMarkedPlace
              map={map}
              label="Place shown"
              title={shown.name}
              point={shown.point}
              accuracyM={null}
              onClear={endShowing}
              onAdd={() => {
                endShowing();
                onAddAt(shown.point);
              }}
            />
          )}
        </Suspense>
      </div>
    </>
  );
}
