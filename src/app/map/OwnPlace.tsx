import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { useEffect, useState } from 'react';
import type { Result } from '../../core/units/result.ts';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { MarkedPlacePanel } from './MarkedPlacePanel.tsx';
import { askOwnPosition, type OwnPosition } from './own-position.ts';

type OwnPlaceProps = {
  readonly map: LeafletMap;
  readonly onAdd: (point: GeoPoint) => void;
  readonly onEnd: () => void;
};

/** Where this device is, asked once when this is mounted. */
export function OwnPlace({ map, onAdd, onEnd }: OwnPlaceProps): ReactNode {
  const [answer, setAnswer] = useState<Result<OwnPosition, string> | null>(null);
  useEffect(function askOnce() {
    let wanted = true;
    void askOwnPosition(navigator.geolocation).then((found) => {
      if (wanted) setAnswer(found);
    });
    return function forget() {
      wanted = false;
    };
  }, []);
  if (answer?.ok === true) {
    const { point, accuracyM } = answer.value;
    return (
      <MarkedPlacePanel
        map={map}
        label="Own position"
        title={`You are here, within ${accuracyText(accuracyM)}`}
        point={point}
        accuracyM={accuracyM}
        onAdd={() => onAdd(point)}
        onClear={onEnd}
      />
    );
  }
  return (
    <section className="map-panel" aria-label="Own position">
      <p role="status" data-note="own-position">
        {answer === null
          ? 'Asking this device where it is. The browser may ask a location service of its own.'
          : answer.problem}
      </p>
      <button type="button" data-clear-mark onClick={onEnd}>
        {answer === null ? 'Do not ask' : 'Close'}
      </button>
    </section>
  );
}

const accuracyText = (accuracyM: number): string =>
  accuracyM < 1000 ? `${Math.ceil(accuracyM)} m` : `${(accuracyM / 1000).toFixed(1)} km`;
