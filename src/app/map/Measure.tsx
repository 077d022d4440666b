import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { useMemo, useState } from 'react';
import { groundVector } from '../../core/place/geodesy.ts';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { CompassLine, type DeclinationAt } from './CompassLine.tsx';
import type { MapSpot } from './map-spot.ts';
import { drawMeasureLayer, makeMeasureLayer } from './measure-layer.ts';
import { measuredText } from './measured-text.ts';
import { spotAt } from './spot-at.ts';
import { useMapLayer } from './use-map-layer.ts';
import { useMeasuring } from './use-measuring.ts';
import { usePickedPoint } from './use-picked-point.ts';
import { usePointAhead } from './use-point-ahead.ts';

type MeasureProps = {
  readonly map: LeafletMap;
  readonly spots: readonly MapSpot[];
  readonly declinationAt: DeclinationAt | undefined;
  readonly onEnd: () => void;
};

type End = { readonly point: GeoPoint; readonly name: string | null };

/** Distance and bearing from one picked point to the next; a third point begins anew. */
export function Measure({ map, spots, declinationAt, onEnd }: MeasureProps): ReactNode {
  const [ends, setEnds] = useState<readonly End[]>([]);
  const pick = (point: GeoPoint): void => {
    const spot = spotAt(map, spots, point);
    const end = spot ? { point: spot.point, name: spot.name } : { point, name: null };
    setEnds(ends.length === 1 ? [...ends, end] : [end]);
  };
  usePickedPoint(map, true, pick);
  useMeasuring(map, onEnd);
  const ahead = usePointAhead(map, ends.length === 1);
  const line = useMemo(() => {
    const points = ends.map(({ point }) => point);
    return ends.length === 1 && ahead ? [...points, ahead] : points;
  }, [ends, ahead]);
  useMapLayer(map, makeMeasureLayer, drawMeasureLayer, line);

  const [from, to] = line;
  const way = from && to ? groundVector(from, to) : null;
  return (
    <section className="map-panel" aria-label="Measure">
      {way && (
        <p className="map-measured" data-figure="measured">
          {measuredText(way)}
        </p>
      )}
      <p className="quiet" role="status">
        {ends.length < 2 ? PROMPTS[ends.length === 0 ? 0 : 1] : betweenText(ends)}
      </p>
      {ends.length === 2 && from && way && declinationAt ? (
        <CompassLine
          point={from}
          bearingDeg={way.bearingDeg}
          declinationAt={declinationAt}
          figure="measured-compass"
        />
      ) : null}
      <button type="button" data-measure-end onClick={onEnd}>
        End measuring
      </button>
    </section>
  );
}

const PROMPTS = [
  'Click where to measure from; with the map in focus, Enter takes the point under the cross.',
  'Now click where to measure to, or move the map and press Enter again.',
] as const;

/** Both ends by name; what is no spot is a point on the map. */
const betweenText = (ends: readonly End[]): string => {
  const [from, to] = ends.map(({ name }) => name ?? 'a point on the map');
  return `From ${from} to ${to}, over the ground; bearing from true north, at the start.`;
};
