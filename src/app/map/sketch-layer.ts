import { CircleMarker, FeatureGroup, Polyline } from 'leaflet';
import type { LatLngTuple } from 'leaflet';
import type { Corner } from '../../core/skyline/obstacle.ts';

export type SketchLook = {
  readonly corners: readonly Corner[];
  readonly closed: boolean;
  readonly ink: string;
};

export const makeSketchLayer = (): FeatureGroup => new FeatureGroup();

/** Corners that were set at the cross or typed, and the line through them. */
export const drawSketchLayer = (
  layer: FeatureGroup,
  { corners, closed, ink }: SketchLook,
): void => {
  layer.clearLayers();
  const places = corners.map(([longitudeDeg, latitudeDeg]): LatLngTuple => [
    latitudeDeg,
    longitudeDeg,
  ]);
  const [first] = places;
  if (first === undefined) return;
  const line = closed && places.length > 2 ? [...places, first] : places;
  layer.addLayer(
    new Polyline(line, { color: ink, weight: 2, interactive: false, dashArray: '6 4' }),
  );
  for (const place of places)
    layer.addLayer(
      new CircleMarker(place, { radius: 4, color: ink, weight: 2, fill: true, interactive: false }),
    );
};
