import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { useEffect, useMemo } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { formatCoordinates } from '../../core/place/format-coordinates.ts';
import { onMapNear } from './on-map-near.ts';
import { drawPositionLayer, makePositionLayer } from './position-layer.ts';
import { useMapLayer } from './use-map-layer.ts';

type MarkedPlacePanelProps = {
  readonly map: LeafletMap;
  readonly label: string;
  readonly title: string;
  readonly point: GeoPoint;
  readonly accuracyM: number | null;
  readonly onAdd: () => void;
  readonly onClear: () => void;
};

const CLOSE_ZOOM = 13;

/** A place that is no spot yet: marked, brought into view, and named. */
export function MarkedPlacePanel(props: MarkedPlacePanelProps): ReactNode {
  const { map, label, title, point, accuracyM, onAdd, onClear } = props;
  const { latitudeDeg, longitudeDeg } = point;
  const place = useMemo(
    () => ({ point: { latitudeDeg, longitudeDeg }, accuracyM }),
    [latitudeDeg, longitudeDeg, accuracyM],
  );
  useMapLayer(map, makePositionLayer, drawPositionLayer, place);
  useEffect(
    function bringIntoView() {
      map.setView(
        onMapNear({ latitudeDeg, longitudeDeg }, map),
        Math.max(map.getZoom(), CLOSE_ZOOM),
        { animate: false },
      );
    },
    [map, latitudeDeg, longitudeDeg],
  );
  return (
    <section className="map-panel" aria-label={label}>
      <p data-figure="marked-place">
        <strong>{title}</strong>
      </p>
      <p className="quiet">{formatCoordinates(point)}</p>
      <div className="map-panel-buttons">
        <button type="button" data-add-here onClick={onAdd}>
          Add a spot here
        </button>
        <button type="button" data-clear-mark onClick={onClear}>
          Take the mark away
        </button>
      </div>
    </section>
  );
}
